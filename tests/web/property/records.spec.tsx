import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { gallons } from '../support/built.js';
import { refusal } from '../support/fake-server.js';
import { controller, page } from './drawn-property.js';

afterEach(cleanup);

const section = async (name: string | RegExp) =>
  within((await screen.findByRole('heading', { level: 2, name })).closest('section') as HTMLElement);
const rows = (table: HTMLElement) =>
  within(table)
    .getAllByRole('row')
    .slice(1)
    .map((row) => [...row.children].map((cell) => cell.textContent?.trim()));

describe('the controllers of a property', () => {
  it('shows what is on one now, what is planned, and its settings through time', async () => {
    page();
    const shown = await section('Controller Clubhouse has not been changed since Wed 1 Jul 2026');
    expect(shown.getByText('12 stations, 3 programs · behind the pool gate')).toBeTruthy();
    expect(rows(shown.getByRole('table', { name: 'Controller Clubhouse: the programs now' }))).toEqual([
      ['A', 'Tue Thu Sat', '9:30 pm', '3: 409: 20', '100%', '60'],
    ]);
    expect(shown.getByText('Planned settings wait: A: Tue Sat, was Tue Thu Sat.')).toBeTruthy();
    expect(rows(shown.getByRole('table', { name: 'Controller Clubhouse: settings through time' }))).toEqual([
      ['Mon 28 Sep 2026', 'as planned', 'A: Tue Sat, was Tue Thu Sat.', ''],
      ['Thu 20 Aug 2026', 'as found', 'Nothing changed.', 'Marisol Vance'],
      [
        'Wed 1 Jul 2026',
        'as left',
        'A: Tue Thu Sat, was Tue Sat; A: 100%, was 90%; A: one station changed, 60 min in all, was 50.',
        'Marisol Vance',
      ],
      ['Mon 1 Jun 2026', 'as left', 'The first that is known.', 'Marisol Vance'],
    ]);
  });

  it('asks to read one whose settings are not known', async () => {
    page({ property: { controllers: [{ ...controller, presentSettings: null, plannedSettings: null, settings: [] }] } });
    const shown = await section('The settings of controller Clubhouse are not known');
    expect(shown.getByText(/^Read the controller on the next visit/)).toBeTruthy();
  });

  it('records at the desk what somebody read, beginning from what the meter’s hours show where nobody has', async () => {
    const seems = {
      through: '2026-09-23',
      programs: [{ name: 'A', days: 'Mon Wed Fri', starts: ['03:00'], minutes: [60], confidence: 0.93 }],
    };
    const unknown = { ...controller, presentSettings: null, plannedSettings: null, settings: [], inferredSettings: seems };
    const { user, calls } = page({
      property: { controllers: [unknown] },
      more: {
        controller: unknown,
        recordSettings: { __typename: 'Settings', ...controller.presentSettings, record: 'found', localTime: '2026-09-22T07:00' },
      },
    });
    const shown = await section('The settings of controller Clubhouse are not known');
    const fold = shown.getByText('Record what is set');
    await user.click(fold);
    // jsdom opens a fold without telling: the browser does.
    fireEvent(fold.closest('details') as HTMLElement, new Event('toggle'));
    expect(await shown.findByText(/By the meter’s hours to Wed 23 Sep water seems to run/)).toBeTruthy();
    expect(shown.getByText('Mon Wed Fri at 3:00 am (60 min); 93% of the days agree')).toBeTruthy();
    const save = shown.getByRole('button', { name: 'Save as found' });
    await user.type(shown.getByLabelText('3'), 'twelve');
    await user.click(save);
    expect(shown.getByRole('alert').textContent).toMatch(/“twelve” is no number of minutes/);
    await user.clear(shown.getByLabelText('3'));
    await user.type(shown.getByLabelText('3'), '12');
    const day = shown.getByLabelText('Day');
    await user.clear(day);
    await user.type(day, '2026-09-22');
    const time = shown.getByLabelText(/^Time/);
    await user.clear(time);
    await user.type(time, '07:00');
    await user.click(save);
    expect(await screen.findByText('Kept: as found, Tue 22 Sep 2026.')).toBeTruthy();
    expect(calls.find(({ name }) => name === 'RecordSettingsAtDesk')?.variables).toMatchObject({
      input: {
        controllerId: 'c1',
        record: 'found',
        state: 'on',
        effectiveAt: '2026-09-22T14:00:00.000Z',
        programs: [{ name: 'A', days: 'Mon Wed Fri', starts: ['03:00'], adjustPercent: 100, stations: [{ station: 3, minutes: 12 }] }],
        deviceRecordId: expect.stringMatching(/^[0-9a-f-]{36}$/),
      },
    });
  });
});

describe('the meters of a property', () => {
  it('lists readings with what each was judged to be', async () => {
    page();
    const shown = await section('Meter Irrigation: 18,922.9 CCF on Thu 24 Sep, 6:50 am is doubted (implausibly high)');
    expect(shown.getByText('irrigation only, recycled water; reads CCF. A CCF costs $4.23.')).toBeTruthy();
    expect(rows(shown.getByRole('table'))).toEqual([
      ['Thu 24 Sep, 6:50 am', '18,922.9', '118,900', 'Marisol Vance', 'implausibly high'],
      ['Tue 15 Sep, 7:15 am', '18,715.9', '118,900', 'Marisol Vance', 'fits'],
    ]);
  });

  it('judges a reading before it is saved, and keeps it even where it is doubtful', async () => {
    const { user, calls } = page({
      more: {
        judgeReading: { judgement: 'digits swapped', litresSinceLast: gallons(900_000), likelyRegister: 19_029 },
        recordReading: {
          __typename: 'Reading',
          id: 'r3',
          meterId: 'm1',
          readAt: '2026-09-20T14:00:00Z',
          register: 19_209,
          source: 'crew',
          recordedAt: '2026-09-24T14:00:00Z',
          judgement: 'ok',
          litresSinceLast: gallons(20_000),
          findings: [],
        },
      },
    });
    await user.type(await screen.findByLabelText('Register, as it stands'), '19,209');
    expect(await screen.findByText(/Look again: digits swapped\?. 19,029 was probably meant/)).toBeTruthy();
    const day = screen.getByLabelText('Day');
    await user.clear(day);
    await user.type(day, '2026-09-20');
    const time = screen.getByLabelText(/^Time/);
    await user.clear(time);
    await user.type(time, '07:00');
    await user.click(screen.getByRole('button', { name: 'Save the reading' }));
    expect(await screen.findByText('Kept: fits, 20,000 gal since the last.')).toBeTruthy();
    expect(calls.find(({ name }) => name === 'RecordReadingAtDesk')?.variables).toMatchObject({
      input: {
        meterId: 'm1',
        register: 19_209,
        readAt: '2026-09-20T14:00:00.000Z',
        note: null,
        deviceRecordId: expect.stringMatching(/^[0-9a-f-]{36}$/),
      },
    });
  });

  it('takes the number that was probably meant by one press', async () => {
    const { user } = page({ more: { judgeReading: { judgement: 'digits swapped', litresSinceLast: null, likelyRegister: 19_029 } } });
    const field = await screen.findByLabelText<HTMLInputElement>('Register, as it stands');
    await user.type(field, '19,209');
    await user.click(await screen.findByRole('button', { name: 'Take 19,029' }));
    expect(field.value).toBe('19029');
  });

  it('says what is wrong with what was typed, and what the server says', async () => {
    const { user, calls } = page({
      more: {
        judgeReading: { judgement: 'ok', litresSinceLast: gallons(900) },
        recordReading: () => {
          throw refusal('VALUE_REFUSED', 'register: found 99999999, expected at most 999999.');
        },
      },
    });
    await user.type(await screen.findByLabelText('Register, as it stands'), 'about ten');
    await user.click(screen.getByRole('button', { name: 'Save the reading' }));
    expect(screen.getByText(/Type the register as a number/)).toBeTruthy();
    expect(calls.some(({ name }) => name === 'RecordReadingAtDesk')).toBe(false);
    await user.clear(screen.getByLabelText('Register, as it stands'));
    await user.type(screen.getByLabelText('Register, as it stands'), '99999999');
    await user.click(screen.getByRole('button', { name: 'Save the reading' }));
    expect((await screen.findByRole('alert')).textContent).toContain('expected at most 999999');
    await waitFor(() => expect(screen.getByText('It fits: 900 gal since the last reading.')).toBeTruthy());
  });
});

describe('what was found, done and changed at a property', () => {
  it('lists findings, those that wait first, and where each stands', async () => {
    page();
    const shown = await section('2 findings wait for a decision or their work');
    expect(rows(shown.getByRole('table')).map((row) => row.at(-1))).toEqual([
      'open accept or dismiss',
      'in work: Crew 2, Mon 28 Sep',
      'dismissed: the board keeps the birches',
    ]);
  });

  it('lists work, visits and changes', async () => {
    const { user } = page();
    const work = await section('One piece of work waits here');
    expect(rows(work.getByRole('table'))).toEqual([
      ['Adjust Two days a week', 'given out, Crew 2, Mon 28 Sep', '', ''],
      ['Read Adjust the controller', 'done, Tue 1 Sep, 8:00 am', 'read and photographed', '$40'],
    ]);
    expect(rows((await section('Visited once')).getByRole('table'))).toEqual([
      [
        'Tue 15 Sep, 7:10 amnot closed yet',
        'Marisol Vance',
        'Meter read1 h 30 min of workused: 2 nozzlePool lawn: 20 gpm by the meter, now on recordphoto 1 one photo is still on a phone',
        '',
      ],
    ]);
    expect(screen.getByRole('link', { name: /^Photo of Tue 15 Sep/ }).getAttribute('href')).toBe('/api/photos/ph1');
    await user.click(screen.getByText('Show the one change'));
    expect(rows((await section('What was changed, by whom')).getByRole('table'))).toEqual([
      ['Wed 2 Sep, 8:00 am', 'June Halvorsen', 'zone: changed', 'areaM2: 800', 'areaM2: 900'],
    ]);
  });
});
