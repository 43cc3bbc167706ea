import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';
import { drawAtPhone, freshPhone, sentOf } from './at-phone.js';
import { builtController, builtMeter, builtStop, builtVisit, NOW, order, property } from './built-stop.js';

beforeEach(freshPhone);
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
  drawAtPhone(<StopPage />, { at: `/today/st1${step}`, route: '/today/:stopId', viewer, language, answers: { stop, ...answers } });

/** The server is there and broke. */
const down = () => {
  throw refusal('UNFORESEEN', 'The server was restarted.');
};

describe('arriving', () => {
  const here = async (user: ReturnType<typeof page>['user']) => {
    await user.click(await screen.findByRole('link', { name: 'Go to the meter' }));
    await screen.findByRole('heading', { name: 'Irrigation' });
  };

  it('begins the visit once the crew says that it is here, under a name of the phone and the organization’s time', async () => {
    const { user, calls } = page({ stop: builtStop() });
    await here(user);
    await waitFor(() => expect(sentOf(calls, 'arrive')).toHaveLength(1));
    const [arrival] = sentOf(calls, 'arrive');
    expect(arrival?.key).toMatch(UUID_V7);
    expect(arrival?.['stopId']).toBe('st1');
    expect(Math.abs(Date.parse(String(arrival?.['arrivedAt'])) - Date.parse(NOW))).toBeLessThan(60_000);
  });

  it('does not arrive for the office, which only looks', async () => {
    const { user, calls } = page({ stop: builtStop(), viewer: viewerOf() });
    await here(user);
    expect(sentOf(calls, 'arrive')).toEqual([]);
  });

  it('does not arrive for a crew that only looks at the stop and goes back', async () => {
    const { user, calls } = page({ stop: builtStop() });
    await screen.findByRole('heading', { name: 'Quail Commons' });
    await user.click(screen.getByRole('link', { name: 'Settings' }));
    await screen.findByRole('heading', { name: 'Controller 1' });
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(sentOf(calls, 'arrive')).toEqual([]);
  });

  it.each([
    ['settings', 'Set as planned'],
    ['zones', 'Leak'],
  ])('arrives with the first deed: %s', async (step, deed) => {
    const { user, calls } = page({ stop: builtStop(), step: `?step=${step}` });
    await user.click(await screen.findByRole('button', { name: new RegExp(`^${deed}`) }));
    await waitFor(() => expect(sentOf(calls, 'arrive')).toHaveLength(1));
  });

  it('arrives with the first reading, before it', async () => {
    const { user, calls } = page({ stop: builtStop(), step: '?step=meter' });
    await user.click(await screen.findByRole('button', { name: '9' }));
    await user.click(screen.getByRole('button', { name: /^Save/ }));
    await waitFor(() => expect(sentOf(calls, 'reading')).toHaveLength(1));
    const kinds = calls.flatMap(({ variables }) => ((variables['operations'] ?? []) as { kind: string }[]).map(({ kind }) => kind));
    expect(kinds.slice(0, 2)).toEqual(['arrive', 'reading']);
  });

  it('tells the cautions of the place in plain words, and what is to be done', async () => {
    page();
    expect(await screen.findByText(/The dog is friendly/)).toBeTruthy();
    expect(screen.getByText(/A licensed electrician opens that compartment/)).toBeTruthy();
    expect(screen.getByText('Adjust: Set program B as planned')).toBeTruthy();
    expect(screen.getByText('Stop 1 of 2')).toBeTruthy();
  });

  it('keeps the name of an arrival that was not answered, also when the page is opened again', async () => {
    const first = page({ stop: builtStop(), answers: { sendFieldwork: down } });
    await here(first.user);
    await waitFor(() => expect(sentOf(first.calls, 'arrive')).toHaveLength(1));
    const [before] = sentOf(first.calls, 'arrive');
    expect(await screen.findByText(/On this phone: one record/)).toBeTruthy();
    cleanup();
    const second = page({ stop: builtStop() });
    await waitFor(() => expect(sentOf(second.calls, 'arrive').length).toBeGreaterThan(0));
    expect(new Set(sentOf(second.calls, 'arrive').map((one) => JSON.stringify(one)))).toEqual(new Set([JSON.stringify(before)]));
  });
});

describe('the meter', () => {
  const type = async (user: ReturnType<typeof page>['user'], digits: string) => {
    for (const digit of digits) await user.click(screen.getByRole('button', { name: digit }));
  };

  it('says at once that a number can be right, and keeps it', async () => {
    const { user, calls } = page({ step: '?step=meter' });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922.9');
    // 207.0 CCF are 154,847 gal (1 CCF = 748.05 gal, NIST SP 811 B.8), told to four figures.
    expect(await screen.findByText(/207 CCF since Tue 15 Sep, 2:00 pm, 154,800 gal/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect(await screen.findByText(/Kept at 10:43 am: fits/)).toBeTruthy();
    expect(await screen.findByText(/All sent. Last at 10:43 am/)).toBeTruthy();
    const [reading] = sentOf(calls, 'reading');
    expect(reading).toMatchObject({ meterId: 'm1', register: 18922.9, note: null, replacesId: null });
    expect(reading?.key).toMatch(UUID_V7);
  });

  it('saves what cannot be right anyway, with a note', async () => {
    const { user, calls } = page({ step: '?step=meter' });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '12');
    expect(await screen.findByText(/it is lower than 18,715.9 on Tue 15 Sep/)).toBeTruthy();
    await user.type(screen.getByLabelText(/What you saw/), 'Meter was swapped');
    await user.click(screen.getByRole('button', { name: 'Save anyway' }));
    await screen.findByText(/Kept at/);
    await waitFor(() => expect(sentOf(calls, 'reading')[0]).toMatchObject({ register: 12, note: 'Meter was swapped' }));
  });

  it('offers the number that was probably meant', async () => {
    const DAY = 86_400_000;
    const newest = Date.parse('2026-09-15T21:00:00Z');
    // A year at 23 CCF a day, as the meter goes on.
    const readings = Array.from({ length: 13 }, (_, at) => ({
      ...builtMeter().readings[0],
      id: `r${at}`,
      readAt: new Date(newest - at * 30 * DAY).toISOString(),
      register: 18715.9 - at * 690,
    }));
    const stop = builtStop({ visit: builtVisit(), property: { ...property, meters: [builtMeter({ readings })] } });
    const { user } = page({ step: '?step=meter', stop });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18292.9');
    await user.click(await screen.findByRole('button', { name: 'It shows 18,922.9' }));
    expect(screen.getByRole('status', { name: 'Register of Irrigation' }).textContent).toContain('18,922.9');
  });

  it('keeps what was saved when the server breaks, sends it again under the same name, and after three tries says so', async () => {
    // Of another crew: no arrival is sent beside it.
    const { user, calls } = page({ step: '?step=meter', answers: { sendFieldwork: down }, viewer: viewerOf({ ...dell, crewIds: [] }) });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922');
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect(await screen.findByText(/Kept at/)).toBeTruthy();
    for (let tries = 1; tries <= 3; tries += 1) {
      await waitFor(() => expect(sentOf(calls, 'reading')).toHaveLength(tries));
      window.dispatchEvent(new Event('online'));
    }
    expect(await screen.findByText(/One record was refused/)).toBeTruthy();
    expect(new Set(sentOf(calls, 'reading').map((one) => JSON.stringify(one))).size).toBe(1);
  });

  it('keeps what is typed, key by key, for when the page is opened again', async () => {
    const first = page({ step: '?step=meter' });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(first.user, '189');
    cleanup();
    page({ step: '?step=meter' });
    expect((await screen.findByRole('status', { name: 'Register of Irrigation' })).textContent).toContain('189');
  });

  it('says when another reading stands in its place', async () => {
    const other = { register: 18920, readAt: NOW, note: null, by: 'Ana' };
    const conflict = ({ operations }: { operations: readonly { key: string }[] }) =>
      operations.map(({ key }) => ({ key, verdict: 'conflict', problem: null, other }));
    const { user } = page({ step: '?step=meter', answers: { sendFieldwork: conflict } });
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18922');
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    expect(await screen.findByText(/Another reading stands for this meter at 10:43 am, by Ana/)).toBeTruthy();
  });
});

describe('the settings', () => {
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

  it('says of an order that newer planned settings overtake it, and of one whose newer settings were entered already', async () => {
    const by = { orderId: 'w9', plannedAt: '2026-09-23T17:05:00Z', state: 'open' };
    page({ stop: builtStop({ workOrders: [{ ...order, overtakenBy: by }] }) });
    expect(
      await screen.findByText(/^Overtaken: this controller has newer planned settings, of .*23.*\. Enter the newer ones\.$/),
    ).toBeTruthy();
    cleanup();
    page({ stop: builtStop({ workOrders: [{ ...order, overtakenBy: { ...by, state: 'done' } }] }) });
    expect(await screen.findByText(/^Overtaken: newer planned settings, .* Do not go back to those of this order\.$/)).toBeTruthy();
  });

  it('says until which day the controller is to be paused, as long as that is to be done', async () => {
    const pause = { ...order, controllerId: 'c1', what: '1', waterAgainOn: '2026-09-28' };
    page({ step: '?step=settings', stop: builtStop({ visit: builtVisit(), workOrders: [pause] }) });
    expect(await screen.findByText('Rain pause: set it so that it waters again on Monday 28 September.')).toBeTruthy();
    cleanup();
    page({ step: '?step=done', stop: builtStop({ visit: builtVisit(), workOrders: [pause] }) });
    expect(await screen.findByRole('heading', { name: 'Rain pause, water again on Monday 28 September: 1' })).toBeTruthy();
    cleanup();
    page({ step: '?step=settings', stop: builtStop({ visit: builtVisit(), workOrders: [{ ...pause, state: 'done' }] }) });
    await screen.findByRole('heading', { name: 'Controller 1' });
    await waitFor(() => expect(screen.queryByText(/Rain pause/)).toBeNull());
  });

  it('records as left in one tap', async () => {
    const { user, calls } = page({ step: '?step=settings' });
    await user.click(await screen.findByRole('button', { name: 'Set as planned' }));
    expect(await screen.findByText('Kept at 10:43 am: as left.')).toBeTruthy();
    await waitFor(() => expect(sentOf(calls, 'settings')).toHaveLength(1));
    expect(sentOf(calls, 'settings')[0]).toMatchObject({
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
    const { user, calls } = page({ step: '?step=settings' });
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
    await waitFor(() => expect(sentOf(calls, 'settings')).toHaveLength(1));
    expect(sentOf(calls, 'settings')[0]).toMatchObject({
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

  it('without a plan, records what is left on a controller of which nothing is known, and says what is beyond its record', async () => {
    const holds = { maxAdjustPercent: 150, maxMinutes: 10, startsPerProgram: 1 };
    const bare = builtController({ plannedSettings: null, presentSettings: null, ...holds });
    const stop = builtStop({ visit: builtVisit(), property: { ...property, controllers: [bare] } });
    const { user, calls } = page({ step: '?step=settings', stop });
    expect(await screen.findByText('What it is set to is not known yet.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Record as left' }));
    await user.type(await screen.findByLabelText('1 north'), '12');
    await user.type(screen.getByLabelText('Start 1'), '05:30');
    expect(
      screen.getByText(/^Program A, station 1: 12 minutes are more than the 10 that this controller is on record to hold\./),
    ).toBeTruthy();
    expect(screen.queryByText(/start times are more than/)).toBeNull();
    await user.type(screen.getByRole('textbox', { name: /^Percent/ }), '0');
    expect(screen.getByText(/^Program A: 1,000% is more than the 150% that/)).toBeTruthy();
    await user.type(screen.getByRole('textbox', { name: /^Percent/ }), '{Backspace}');
    expect(screen.queryByText(/% is more than the/)).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Save as left' }));
    await screen.findByText(/as left/);
    await waitFor(() => expect(sentOf(calls, 'settings')).toHaveLength(1));
    expect(sentOf(calls, 'settings')[0]).toMatchObject({
      record: 'left',
      programs: [{ name: 'A', days: 'daily', starts: ['05:30'], stations: [{ station: 1, minutes: 12 }] }],
    });
  });

  it('begins from what the meter’s hours show where nobody has read the controller', async () => {
    const seems = {
      through: '2026-09-23',
      programs: [{ name: 'A', days: 'Mon Wed Fri', starts: ['03:00'], minutes: [60], confidence: 0.93 }],
    };
    const unread = builtController({ plannedSettings: null, presentSettings: null, inferredSettings: seems });
    const { user, calls } = page({
      step: '?step=settings',
      stop: builtStop({ visit: builtVisit(), property: { ...property, controllers: [unread] } }),
    });
    expect(await screen.findByText('Mon Wed Fri at 3:00 am (60 min); 93% of the days agree')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Record as left' }));
    await user.type(await screen.findByLabelText('1 north'), '60');
    await user.click(screen.getByRole('button', { name: 'Save as left' }));
    await waitFor(() => expect(sentOf(calls, 'settings')).toHaveLength(1));
    expect(sentOf(calls, 'settings')[0]).toMatchObject({
      programs: [{ days: 'Mon Wed Fri', starts: ['03:00'], stations: [{ station: 1, minutes: 60 }] }],
    });
  });
});

describe('the zones', () => {
  it('walks them in the order of their stations, one tap for what is seen, always the whole count', async () => {
    const { user, calls } = page({ step: '?step=zones', language: 'es' });
    await screen.findByRole('heading', { name: 'Zona 1, north' });
    expect(screen.getByRole('link', { name: 'Siguiente: zona 2' })).toBeTruthy();
    await user.click(screen.getByRole('button', { name: /^Fuga/ }));
    await user.click(screen.getByRole('button', { name: 'Uno más' }));
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)?.['count']).toBe(2));
    expect(sentOf(calls, 'note-zone').at(-1)).toMatchObject({
      visitId: 'v1',
      zoneId: 'z1',
      kind: 'leak',
      count: 2,
      repaired: false,
      word: null,
    });
  });

  it('sends what was tapped when the next zone comes sooner', async () => {
    const { user, calls } = page({ step: '?step=zones' });
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await user.click(screen.getByRole('checkbox', { name: 'Repaired now' }));
    await user.click(screen.getByRole('link', { name: 'Next: zone 2' }));
    await screen.findByRole('heading', { name: 'Zone 2, south' });
    const told = { visitId: 'v1', zoneId: 'z1', kind: 'leak', count: 1, repaired: true, word: null };
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)).toMatchObject(told));
  });
});

describe('the tests', () => {
  const gallons = builtMeter({ unit: 'gal', resolution: 1, digits: 6 });
  const asked = {
    id: 'f2',
    version: 1,
    kind: 'flow to be tested',
    state: 'in work',
    cameBack: 0,
    openedAt: NOW,
    says: { code: 'stale', details: {} },
    property,
    workOrders: [],
  };
  const stop = builtStop({
    visit: builtVisit(),
    property: { ...property, meters: [gallons] },
    workOrders: [{ ...order, kind: 'inspect', what: 'Test the flows', finding: asked }],
  });
  const type = async (user: ReturnType<typeof page>['user'], digits: string) => {
    for (const digit of digits) await user.click(screen.getByRole('button', { name: digit }));
  };

  it('follow the zones where they are asked for, and tell the flow at once from two registers and the clock', async () => {
    const { user, calls } = page({ step: '?step=zones&thing=z2', stop });
    await user.click(await screen.findByRole('link', { name: 'On to tests' }));
    expect(await screen.findByText('Inspect: Test the flows')).toBeTruthy();
    await user.click(screen.getByRole('link', { name: /north/ }));
    // 212 L/min are 56.0 gpm (1 gal is 3.785411784 L).
    expect(await screen.findByText(/On record: 56 gpm; no evenness/)).toBeTruthy();
    // The clock starts at the glance; typed while the water runs, the register is still that of the start. Without it nothing stops.
    await user.click(screen.getByRole('button', { name: 'Start the clock' }));
    await user.click(screen.getByRole('button', { name: 'Type the first register' }));
    await type(user, '999960');
    expect(screen.getByRole('timer', { name: 'The zone has run' }).textContent).toMatch(/^0:0\d/);
    const real = Date.now;
    Date.now = () => real() + 4 * 60_000;
    await user.click(screen.getByRole('button', { name: 'Stop the clock' })).finally(() => {
      Date.now = real;
    });
    await type(user, '000040');
    expect((await screen.findByText(/On record: 56 gpm\./)).textContent).toMatch(/^(20|19\.9) gpm/);
    await user.click(screen.getByRole('button', { name: 'Save test' }));
    expect(await screen.findByText(/It goes on the zone’s record as measured/)).toBeTruthy();
    await waitFor(() => expect(sentOf(calls, 'flow-test')).toHaveLength(1));
    const [sent] = sentOf(calls, 'flow-test');
    expect(sent).toMatchObject({ visitId: 'v1', zoneId: 'z1', meterId: 'm1', registerBefore: 999_960, registerAfter: 40 });
    expect(sent?.['minutes']).toBeCloseTo(4, 1);
  });

  it('say that a register reads too coarsely, and let the zone run on; the clock has never stopped', async () => {
    const { user } = page({ step: '?step=tests&thing=z1', stop });
    await screen.findByRole('heading', { name: 'Zone 1, north' });
    await type(user, '100');
    await user.click(screen.getByRole('button', { name: 'Start the clock' }));
    await user.click(screen.getByRole('button', { name: 'Stop the clock' }));
    await type(user, '101');
    expect(await screen.findByText(/reads too coarsely for so short a time/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Let it run on' }));
    expect(screen.getByRole('timer')).toBeTruthy();
  });

  it('tell the evenness from the fourth can on', async () => {
    const { user, calls } = page({ step: '?step=tests&thing=z1', stop });
    await user.click(await screen.findByRole('tab', { name: 'Cans' }));
    for (const caught of ['40', '40', '40']) {
      await type(user, caught);
      await user.click(screen.getByRole('button', { name: 'Next can' }));
    }
    expect(screen.getByText(/From the fourth can on/)).toBeTruthy();
    await type(user, '20');
    // The driest of four beside the mean of 35: 57 %.
    expect((await screen.findByText(/evenness: the driest quarter of 4 cans/)).textContent).toMatch(/^57% evenness/);
    await user.type(screen.getByLabelText(/Minutes it ran/), '10');
    await user.type(screen.getByLabelText(/Width of a can’s mouth, in/), '4');
    await user.click(screen.getByRole('button', { name: 'Save test' }));
    expect(await screen.findByText(/It stands beside the record/)).toBeTruthy();
    await waitFor(() => expect(sentOf(calls, 'catch-test')).toHaveLength(1));
    const [sent] = sentOf(calls, 'catch-test');
    expect(sent).toMatchObject({ zoneId: 'z1', catchesMl: [40, 40, 40, 20], minutes: 10 });
    // A circle 4 in wide: pi x (0.0508 m)^2.
    expect(sent?.['mouthM2']).toBeCloseTo(Math.PI * 0.0508 ** 2, 9);
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
    });
    await user.click(await screen.findByRole('button', { name: 'Close the stop' }));
    expect(screen.getByRole('alert').textContent).toContain('Say of “Adjust: Set program B as planned” whether it is done');
    await user.click(screen.getByRole('button', { name: 'Done' }));
    await user.type(screen.getByLabelText(/What you found and did/), 'Set and tested');
    await user.click(screen.getByRole('button', { name: 'Add a material' }));
    await user.clear(screen.getByLabelText('How many, line 1'));
    await user.type(screen.getByLabelText('How many, line 1'), '2');
    await user.type(screen.getByLabelText('Of what, line 1'), 'Nozzle');
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    await screen.findByRole('heading', { name: /^Closed at 10:43 am/ });
    await waitFor(() => expect(sentOf(calls, 'close-visit')).toHaveLength(1));
    expect(sentOf(calls, 'end-order')).toMatchObject([
      { workOrderId: 'w1', version: 1, done: true, note: 'Set and tested', resolvesFinding: true },
    ]);
    expect(sentOf(calls, 'close-visit')[0]).toMatchObject({
      visitId: 'v1',
      doneNote: null,
      leftNote: null,
      workedMinutes: 43,
      materials: [{ name: 'Nozzle', count: 2, unit: null }],
    });
  });

  it('once closed, tells the time on site and leads to the next stop', async () => {
    page({ step: '?step=done', stop: builtStop({ visit: closed }) });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Closed at 10:43 am, after 43 min');
    const next = screen.getByRole('link', { name: 'Next: Old Mill Shops' });
    expect(next.getAttribute('href')).toBe('/today/st2');
    expect(within(screen.getByRole('navigation')).getAllByRole('link')).toHaveLength(5);
  });
});

it('says what to do when the stop is gone', async () => {
  page({ stop: () => null });
  expect(await screen.findByRole('heading', { name: 'This stop is no longer on a route' })).toBeTruthy();
});
