import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';
import { builtController, builtStop, builtVisit, litres207Ccf, me, NOW, order, property } from './built-stop.js';

beforeEach(() => sessionStorage.clear());
afterEach(cleanup);

const dell = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });
const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

interface Given {
  readonly step?: string;
  readonly stop?: unknown;
  readonly answers?: Readonly<Record<string, unknown>>;
  readonly viewer?: typeof dell;
  readonly language?: 'en' | 'es';
}

const page = ({ step = '', stop = builtStop({ visit: builtVisit() }), answers = {}, viewer = dell, language = 'en' }: Given = {}) =>
  drawPage(<StopPage />, { at: `/today/st1${step}`, route: '/today/:stopId', viewer, language, answers: { stop, me, ...answers } });

type Calls = readonly { readonly name: string; readonly variables: Readonly<Record<string, unknown>> }[];
const sent = (calls: Calls, name: string) =>
  calls.filter((call) => call.name === name).map(({ variables }) => variables['input'] as Record<string, unknown>);

describe('arriving', () => {
  it('begins the visit once on first opening, under a name of the phone and the organization’s time', async () => {
    const { calls } = page({ stop: builtStop(), answers: { arrive: builtVisit() } });
    await screen.findByRole('heading', { name: 'Quail Commons' });
    await waitFor(() => expect(sent(calls, 'Arrive')).toHaveLength(1));
    const [input] = sent(calls, 'Arrive');
    expect(String(input?.['deviceRecordId'])).toMatch(UUID_V7);
    expect(input?.['stopId']).toBe('st1');
    expect(Math.abs(Date.parse(String(input?.['arrivedAt'])) - Date.parse(NOW))).toBeLessThan(5000);
  });

  it('does not arrive for the office, which only looks', async () => {
    const { calls } = page({ stop: builtStop(), viewer: viewerOf() });
    await screen.findByRole('heading', { name: 'Quail Commons' });
    await waitFor(() => expect(calls.some(({ name }) => name === 'OrganizationClock')).toBe(true));
    expect(sent(calls, 'Arrive')).toEqual([]);
  });

  it('tells the cautions of the place in plain words, and what is to be done', async () => {
    page();
    expect(await screen.findByText(/The dog is friendly/)).toBeTruthy();
    expect(screen.getByText(/A licensed electrician opens that compartment/)).toBeTruthy();
    expect(screen.getByText('Adjust: Set program B as planned')).toBeTruthy();
    expect(screen.getByText('Stop 1 of 2')).toBeTruthy();
  });

  it('keeps the name of an arrival that was not answered, for the next try', async () => {
    const down = () => {
      throw refusal('UNFORESEEN', 'down');
    };
    const first = page({ stop: builtStop(), answers: { arrive: down } });
    await screen.findByText(/Not sent: your arrival/);
    const [before] = sent(first.calls, 'Arrive');
    cleanup();
    const second = page({ stop: builtStop(), answers: { arrive: builtVisit() } });
    await waitFor(() => expect(sent(second.calls, 'Arrive')).toHaveLength(1));
    expect(sent(second.calls, 'Arrive')[0]).toEqual(before);
  });
});

describe('the meter', () => {
  const judged = (judgement: string, given: object = {}) => ({
    judgeReading: {
      judgement,
      litresSinceLast: litres207Ccf,
      lastReadAt: '2026-09-15T21:00:00Z',
      lastRegister: 18715.9,
      likelyRegister: null,
      ...given,
    },
  });
  const reading = {
    __typename: 'Reading',
    id: 'r1',
    meterId: 'm1',
    readAt: NOW,
    register: 18922.9,
    judgement: 'ok',
    litresSinceLast: litres207Ccf,
    note: null,
    source: 'crew',
    recordedAt: NOW,
    findings: [],
  };
  const type = async (user: ReturnType<typeof page>['user'], digits: string) => {
    for (const digit of digits) await user.click(screen.getByRole('button', { name: digit }));
  };

  it('says at once that a number can be right, and keeps it', async () => {
    const { user, calls } = page({
      step: '?step=meter',
      answers: { ...judged('ok'), recordReading: reading },
    });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922.9');
    // 207.0 CCF are 154,847 gal (1 CCF = 748.05 gal, NIST SP 811 B.8), told to four figures.
    expect(await screen.findByText(/207 CCF since Tue 15 Sep, 2:00 pm, 154,800 gal/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect(await screen.findByText(/Kept at 10:43 am: fits/)).toBeTruthy();
    expect(sent(calls, 'RecordReading')[0]).toMatchObject({ meterId: 'm1', register: 18922.9, note: null });
    expect(String(sent(calls, 'RecordReading')[0]?.['deviceRecordId'])).toMatch(UUID_V7);
    expect(screen.getByText(/All sent. Last at 10:43 am/)).toBeTruthy();
  });

  it('saves what cannot be right anyway, with a note', async () => {
    const { user, calls } = page({
      step: '?step=meter',
      answers: { ...judged('lower than last', { litresSinceLast: null }), recordReading: reading },
    });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '12');
    expect(await screen.findByText(/it is lower than 18,715.9 on Tue 15 Sep/)).toBeTruthy();
    await user.type(screen.getByLabelText(/What you saw/), 'Meter was swapped');
    await user.click(screen.getByRole('button', { name: 'Save anyway' }));
    await screen.findByText(/Kept at/);
    expect(sent(calls, 'RecordReading')[0]).toMatchObject({ register: 12, note: 'Meter was swapped' });
  });

  it('offers the number that was probably meant', async () => {
    const { user } = page({ step: '?step=meter', answers: judged('digits swapped', { likelyRegister: 18922.9 }) });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18292.9');
    await user.click(await screen.findByRole('button', { name: 'It shows 18,922.9' }));
    expect(screen.getByRole('status', { name: 'Register of Irrigation' }).textContent).toContain('18,922.9');
  });

  it('keeps what was typed when the server does not answer, and sends it again under the same name', async () => {
    let isDown = true;
    const answer = () => {
      if (isDown) throw refusal('UNFORESEEN', 'The server was restarted.');
      return reading;
    };
    const { user, calls } = page({ step: '?step=meter', answers: { ...judged('ok'), recordReading: answer } });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922');
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect((await screen.findByRole('alert')).textContent).toContain('The server was restarted.');
    expect(screen.getByText(/Not sent: the reading of Irrigation. It is kept here./)).toBeTruthy();
    expect(screen.getByRole('status', { name: 'Register of Irrigation' }).textContent).toContain('18,922');
    isDown = false;
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    await screen.findByText(/Kept at/);
    const [first, second] = sent(calls, 'RecordReading');
    expect(second).toEqual(first);
  });

  it('says when another reading stands in its place', async () => {
    const conflict = { __typename: 'ReadingConflict', kept: { ...reading, register: 18920, recordedBy: 'Ana' } };
    const { user } = page({ step: '?step=meter', answers: { ...judged('ok'), recordReading: conflict } });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922');
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect(await screen.findByText(/Another reading stands for this meter at 10:43 am, by Ana/)).toBeTruthy();
  });
});

describe('the settings', () => {
  const left = {
    __typename: 'Settings',
    id: 's-left',
    controllerId: 'c1',
    effectiveAt: NOW,
    localTime: '',
    record: 'left',
    state: 'on',
    programs: [],
    recordedAt: NOW,
  };

  it('shows planned beside now, only what differs marked', async () => {
    page({ step: '?step=settings' });
    await screen.findByRole('heading', { name: 'Controller 1' });
    expect(screen.getByRole('tab').textContent).toBe('B2 differ');
    const rows = screen.getAllByRole('row').slice(1);
    expect(rows.map((row) => [row.className.includes('differs'), row.textContent])).toEqual([
      [true, 'Days5 daysM T Th F Su7 daysevery day'],
      [true, '1 north32 min36 min'],
      [false, '2 south25 min25 min'],
      [false, 'Start3:00 am3:00 am'],
      [false, 'Percent100100'],
    ]);
  });

  it('records as left in one tap', async () => {
    const { user, calls } = page({ step: '?step=settings', answers: { recordSettings: left } });
    await user.click(await screen.findByRole('button', { name: 'Set as planned' }));
    expect(await screen.findByText('Kept at 10:43 am: as left.')).toBeTruthy();
    expect(sent(calls, 'RecordSettings')[0]).toMatchObject({
      controllerId: 'c1',
      record: 'left',
      state: 'on',
      programs: [
        {
          name: 'B',
          days: 'Mon Tue Thu Fri Sun',
          starts: ['03:00'],
          adjustPercent: 100,
          stations: [
            { station: 1, minutes: 32 },
            { station: 2, minutes: 25 },
          ],
        },
      ],
    });
  });

  it('records what is found when it is different', async () => {
    const { user, calls } = page({ step: '?step=settings', answers: { recordSettings: { ...left, record: 'found' } } });
    await user.click(await screen.findByRole('button', { name: 'Found different' }));
    await screen.findByRole('heading', { name: 'What is on Controller 1 now?' });
    const minutes = screen.getByLabelText('1 north');
    await user.clear(minutes);
    await user.type(minutes, 'many');
    await user.click(screen.getByRole('button', { name: 'Save as found' }));
    expect(screen.getByRole('alert').textContent).toContain('Program B, station 1: “many” is no number of minutes');
    await user.clear(minutes);
    await user.type(minutes, '40');
    await user.click(screen.getByRole('button', { name: 'Save as found' }));
    await screen.findByRole('button', { name: 'Set as planned' });
    expect(sent(calls, 'RecordSettings')[0]).toMatchObject({
      record: 'found',
      programs: [
        {
          days: 'daily',
          stations: [
            { station: 1, minutes: 40 },
            { station: 2, minutes: 25 },
          ],
        },
      ],
    });
  });

  it('without a plan, records what is left on a controller of which nothing is known', async () => {
    const bare = builtController({ plannedSettings: null, presentSettings: null });
    const stop = builtStop({ visit: builtVisit(), property: { ...property, controllers: [bare] } });
    const { user, calls } = page({ step: '?step=settings', stop, answers: { recordSettings: left } });
    expect(await screen.findByText('What it is set to is not known yet.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Record as left' }));
    await user.type(await screen.findByLabelText('1 north'), '12');
    await user.type(screen.getByLabelText('Start 1'), '05:30');
    await user.click(screen.getByRole('button', { name: 'Save as left' }));
    await screen.findByText(/as left/);
    expect(sent(calls, 'RecordSettings')[0]).toMatchObject({
      record: 'left',
      programs: [{ name: 'A', days: 'daily', starts: ['05:30'], stations: [{ station: 1, minutes: 12 }] }],
    });
  });
});

describe('the zones', () => {
  const note = (_: unknown) => ({
    id: 'n1',
    visitId: 'v1',
    zoneId: 'z1',
    kind: 'leak',
    count: 1,
    word: null,
    repaired: false,
    recordedAt: NOW,
  });

  it('walks them in the order of their stations, one tap for what is seen, always the whole count', async () => {
    const { user, calls } = page({ step: '?step=zones', language: 'es', answers: { noteZone: note } });
    await screen.findByRole('heading', { name: 'Zona 1, north' });
    expect(screen.getByRole('link', { name: 'Siguiente: zona 2' })).toBeTruthy();
    await user.click(screen.getByRole('button', { name: /^Fuga/ }));
    await user.click(screen.getByRole('button', { name: 'Uno más' }));
    await waitFor(() => expect(sent(calls, 'NoteZone').length).toBeGreaterThan(0), { timeout: 4000 });
    expect(sent(calls, 'NoteZone').at(-1)).toEqual({ visitId: 'v1', zoneId: 'z1', kind: 'leak', count: 2, repaired: false, word: null });
  });

  it('sends what was tapped when the next zone comes sooner', async () => {
    const { user, calls } = page({ step: '?step=zones', answers: { noteZone: note } });
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await user.click(screen.getByRole('checkbox', { name: 'Repaired now' }));
    await user.click(screen.getByRole('link', { name: 'Next: zone 2' }));
    await screen.findByRole('heading', { name: 'Zone 2, south' });
    await waitFor(() =>
      expect(sent(calls, 'NoteZone')).toEqual([{ visitId: 'v1', zoneId: 'z1', kind: 'leak', count: 1, repaired: true, word: null }]),
    );
  });
});

describe('the end', () => {
  const closed = builtVisit({ closedAt: NOW });

  it('asks of each order, ends it, closes the visit', async () => {
    const stop = builtStop({
      visit: builtVisit(),
      workOrders: [
        {
          ...order,
          finding: {
            id: 'f1',
            version: 1,
            kind: 'stale',
            state: 'in work',
            cameBack: 0,
            openedAt: NOW,
            says: { code: 'stale', details: {} },
            property,
            workOrders: [],
          },
        },
      ],
    });
    const { user, calls } = page({
      step: '?step=done',
      stop,
      answers: { closeWorkOrder: { __typename: 'WorkOrder', ...order, state: 'done', version: 2 }, closeVisit: closed },
    });
    await user.click(await screen.findByRole('button', { name: 'Close the stop' }));
    expect(screen.getByRole('alert').textContent).toContain('Say of “Adjust: Set program B as planned” whether it is done');
    await user.click(screen.getByRole('button', { name: 'Done' }));
    await user.type(screen.getByLabelText(/What you found and did/), 'Set and tested');
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    await waitFor(() => expect(calls.some(({ name }) => name === 'CloseVisit')).toBe(true));
    expect(sent(calls, 'CloseWorkOrder')).toEqual([{ id: 'w1', version: 1, done: true, note: 'Set and tested', resolvesFinding: true }]);
    expect(calls.find(({ name }) => name === 'CloseVisit')?.variables).toMatchObject({
      id: 'v1',
      version: 1,
      doneNote: null,
      leftNote: null,
    });
  });

  it('says who changed an order meanwhile, and does not close', async () => {
    const changed = { __typename: 'ChangedMeanwhile', id: 'w1', version: 3, changedBy: 'Ana', changedAt: '2026-09-24T16:10:00Z' };
    const { user, calls } = page({ step: '?step=done', answers: { closeWorkOrder: changed } });
    await user.click(await screen.findByRole('button', { name: 'Another day' }));
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    expect((await screen.findByRole('alert')).textContent).toContain('was changed by Ana at 9:10 am');
    expect(calls.some(({ name }) => name === 'CloseVisit')).toBe(false);
  });

  it('once closed, tells the time on site and leads to the next stop', async () => {
    page({ step: '?step=done', stop: builtStop({ visit: closed }) });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Closed at 10:43 am, after 43 min');
    const next = screen.getByRole('link', { name: 'Next: Old Mill Shops' });
    expect(next.getAttribute('href')).toBe('/today/st2');
    expect(within(screen.getByRole('navigation')).getAllByRole('link')).toHaveLength(4);
  });
});

it('says what to do when the stop is gone', async () => {
  page({ stop: () => null });
  expect(await screen.findByRole('heading', { name: 'This stop is no longer on a route' })).toBeTruthy();
});
