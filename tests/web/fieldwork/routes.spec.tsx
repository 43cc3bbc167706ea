import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { listenToDay } from '../../../apps/web/src/features/fieldwork/routes/live/listen-to-day.js';
import { MonthPlanPage } from '../../../apps/web/src/features/fieldwork/routes/month/MonthPlanPage.js';
import { PhonesPage } from '../../../apps/web/src/features/fieldwork/phones/PhonesPage.js';
import { isOlder } from '../../../apps/web/src/features/fieldwork/phones/versions.js';
import { daySketch, HALF } from '../../../apps/web/src/features/fieldwork/routes/day-map/day-sketch.js';
import { RouteSheetPage } from '../../../apps/web/src/features/fieldwork/routes/sheet/RouteSheetPage.js';
import { RoutesPage } from '../../../apps/web/src/features/fieldwork/routes/RoutesPage.js';
import { builtCrew, builtProperty, builtWorkOrder } from '../support/built.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';
import { builtStop } from './built-stop.js';
import { SpokenSource } from './spoken-source.js';

afterEach(cleanup);

const crews = [builtCrew('crew-1', 'Crew 1'), builtCrew('crew-2', 'Crew 2')];
const open = builtWorkOrder('w8', 'inspect', { what: 'Walk the main line', estimateMinutes: 30 });
const waiting = builtWorkOrder('w9', 'repair', { state: 'waiting for approval', what: 'Replace the valve', cost: 1024, notToExceed: 900 });

const page = (answers: Readonly<Record<string, unknown>> = {}, viewer = viewerOf()) =>
  drawPage(<RoutesPage />, {
    at: '/routes',
    route: '/routes',
    viewer,
    answers: {
      routes: [builtStop()['route']],
      crews,
      workOrders: ({ state }: { state: string[] }) => (state[0] === 'open' ? [open] : [waiting]),
      properties: [builtProperty('p1', 'Quail Commons')],
      ...answers,
    },
  });

const variables = (calls: readonly { name: string; variables: object }[], name: string) =>
  calls.find((call) => call.name === name)?.variables;

describe('routes', () => {
  it('lists each crew’s day, what nobody has, and what waits for approval', async () => {
    page();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      '2 stops on this day; one order waits for a crew, one for approval',
    );
    expect(screen.getByRole('heading', { name: 'Crew 1, 2 stops' })).toBeTruthy();
    expect(screen.getByText('Crew 2 has nothing on this day.')).toBeTruthy();
    expect(
      within(screen.getByRole('table', { name: 'One order that nobody has yet' })).getByText('Inspect: Walk the main line'),
    ).toBeTruthy();
    const cost = within(screen.getByRole('table', { name: 'One order waits for approval' })).getAllByRole('row')[1];
    expect(cost?.textContent).toContain('$1,024');
    expect(cost?.textContent).toContain('$900');
  });

  it('moves a stop with a press, to the place of its neighbour', async () => {
    const { user, calls } = page({ moveStop: builtStop()['route'] });
    await user.click(await screen.findByRole('button', { name: 'Old Mill Shops earlier' }));
    await waitFor(() => expect(variables(calls, 'MoveStop')).toEqual({ id: 'st2', version: 1, position: 1 }));
    expect(screen.queryByRole('button', { name: 'Old Mill Shops later' })).toBeNull();
  });

  it('gives an order to a crew and a day; the dialog stands in the address', async () => {
    const { user, calls, address } = page({ assignWorkOrder: { __typename: 'WorkOrder', ...open, state: 'given out' } });
    await user.click(await screen.findByRole('button', { name: 'Give out: Inspect: Walk the main line, Quail Commons' }));
    expect(address()).toBe('/routes?order=w8');
    await user.click(screen.getByRole('radio', { name: 'Crew 2' }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Give out' }));
    await waitFor(() =>
      expect(variables(calls, 'GiveOutWorkOrder')).toEqual({ id: 'w8', version: 1, crewId: 'crew-2', day: '2026-09-24' }),
    );
    expect(await screen.findByText('Given to Crew 2, Thursday 24 September.')).toBeTruthy();
    expect(address()).toBe('/routes');
  });

  it('takes an order back', async () => {
    const { user, calls } = page({ assignWorkOrder: { __typename: 'WorkOrder', ...open } });
    await user.click(await screen.findByRole('button', { name: /take back: Adjust/ }));
    await user.click(screen.getByRole('radio', { name: 'nobody yet' }));
    await user.click(screen.getByRole('button', { name: 'Take it back' }));
    await waitFor(() => expect(variables(calls, 'GiveOutWorkOrder')).toEqual({ id: 'w1', version: 1, crewId: null, day: null }));
  });

  it('approves, unless somebody was there first', async () => {
    const changed = { __typename: 'ChangedMeanwhile', id: 'w9', version: 2, changedBy: 'Ana', changedAt: '2026-09-24T16:10:00Z' };
    const { user } = page({ approveWorkOrder: changed });
    await user.click(await screen.findByRole('button', { name: 'Approve: Repair: Replace the valve, Quail Commons' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Changed by Ana at 9:10 am');
  });

  it('names the price of an order of which an offer is wanted; nobody approves it before, and it waits for the client', async () => {
    const wanted = { ...waiting, cost: null, isOffer: true };
    const { user, calls } = page({
      workOrders: ({ state }: { state: string[] }) => (state[0] === 'open' ? [] : [wanted]),
      changeWorkOrder: { __typename: 'WorkOrder', ...wanted, cost: 420, version: 2 },
    });
    expect(await screen.findByRole('cell', { name: 'offer wanted' })).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^(Approve|The client said yes)/ })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Name its price: Repair: Replace the valve, Quail Commons' }));
    const dialog = within(screen.getByRole('dialog', { name: 'What does it cost? Repair: Replace the valve' }));
    await user.click(dialog.getByRole('button', { name: 'Keep the price' }));
    expect(dialog.getByRole('alert').textContent).toContain('Name hours and the price of an hour, or a part with its price.');
    await user.type(dialog.getByLabelText(/Hours of labour/), '4');
    await user.type(dialog.getByLabelText(/Price of an hour/), '90');
    await user.type(dialog.getByLabelText(/Part 1: what it is/), 'Valve');
    await user.type(dialog.getByLabelText('Part 1: price of one'), '60');
    await user.click(dialog.getByRole('button', { name: 'Keep the price' }));
    await waitFor(() =>
      expect(variables(calls, 'PriceWorkOrder')).toMatchObject({
        id: 'w9',
        version: 1,
        input: {
          kind: 'repair',
          what: 'Replace the valve',
          labourHours: 4,
          labourRate: 90,
          parts: [{ name: 'Valve', count: 1, price: 60 }],
        },
      }),
    );
    expect(await screen.findByText(/^The price is kept. It waits for the client’s yes/)).toBeTruthy();
  });

  it('says of an order that still waits for its client that it is given to nobody', async () => {
    const { user } = page({ assignWorkOrder: { __typename: 'WorkOrder', ...open, state: 'waiting for approval' } });
    await user.click(await screen.findByRole('button', { name: 'Give out: Inspect: Walk the main line, Quail Commons' }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Give out' }));
    expect((await screen.findByRole('alert')).textContent).toContain('It still waits: its client has not agreed to its price yet.');
  });

  it('shows no way to approve to those who may not', async () => {
    page({}, viewerOf({ role: 'crewLead', permissions: ['assign work', 'read routes'] }));
    await screen.findByRole('table', { name: 'One order waits for approval' });
    expect(screen.queryByRole('button', { name: /^Approve/ })).toBeNull();
  });

  it('makes a work order; one above the limit says that it waits', async () => {
    const needed = { __typename: 'ApprovalNeeded', cost: 1200, notToExceed: 900, workOrder: waiting };
    const { user, calls } = page({ createWorkOrder: needed });
    await user.click(await screen.findByRole('button', { name: 'New work order' }));
    await user.click(screen.getByRole('button', { name: 'Make the order' }));
    expect(screen.getByRole('alert').textContent).toContain('Choose the property');
    await user.selectOptions(screen.getByLabelText('Property'), 'Quail Commons');
    await user.click(screen.getByRole('radio', { name: 'repair' }));
    await user.type(screen.getByLabelText(/Hours of labour/), '8');
    await user.type(screen.getByLabelText(/Price of an hour/), '150');
    await user.click(screen.getByRole('button', { name: 'Make the order' }));
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('it costs $1,200, and $900 may be spent'));
    expect(variables(calls, 'CreateWorkOrder')).toEqual({
      input: {
        deviceRecordId: expect.stringMatching(/^[\da-f-]{36}$/),
        propertyId: 'p1',
        kind: 'repair',
        what: null,
        estimateMinutes: null,
        labourHours: 8,
        labourRate: 150,
        notBefore: null,
        dueOn: null,
        skills: null,
      },
    });
    // Pressed again it is the same order.
    await user.click(screen.getByRole('button', { name: 'Make the order' }));
    const sent = () => calls.filter(({ name }) => name === 'CreateWorkOrder').map(({ variables: said }) => said);
    await waitFor(() => expect(sent()).toHaveLength(2));
    expect(sent()[1]).toEqual(sent()[0]);
  });
});

const planned = (id: string, name: string, beginMinute: number, given: object = {}) => ({
  stop: { id, version: 1, position: 1, locked: false, property: builtProperty(`p-${id}`, name), cautions: [], workOrders: [], ...given },
  driveMinutes: 5,
  beginMinute,
  endMinute: beginMinute + 40,
  lateMinutes: 0,
  visited: false,
  visitDueOn: null,
});
const dayOf = (crew: (typeof crews)[number], day: string, stops: readonly object[], given: object = {}) => ({
  id: `${crew.id} ${day}`,
  crew,
  day,
  works: true,
  stops,
  leavesMinute: 420,
  homeMinute: 500,
  driveMinutes: 10,
  driveMetres: null,
  workMinutes: 80,
  waitMinutes: 0,
  mostMinutes: 480,
  says: [],
  ...given,
});
const [crew1, crew2] = crews as [(typeof crews)[number], (typeof crews)[number]];
const monthOf = (given: object = {}) => ({
  month: '2026-09',
  today: '2026-09-24',
  days: [
    dayOf(crew1, '2026-09-24', [planned('a', 'Quail Commons', 425), planned('b', 'Old Mill Shops', 470)], { waitMinutes: 95 }),
    dayOf(crew1, '2026-09-25', [planned('c', 'Alder Row', 425, { locked: true })], {
      says: ['tooBusy', 'late'].map((code) => ({ code, details: { stopId: 'c', minutes: code === 'late' ? null : 25 } })),
    }),
    dayOf(crew2, '2026-09-24', []),
    dayOf(crew2, '2026-09-25', []),
    dayOf(crew2, '2026-09-28', []),
  ],
  unplaced: [
    {
      id: 'orders p9',
      property: builtProperty('p9', 'Tern House'),
      orders: [open],
      visitDueOn: null,
      minutes: 30,
      reason: { code: 'noSkill', details: { skills: ['trees'] } },
    },
  ],
  travel: { source: 'straight-line estimate', factor: 1.3, kilometresPerHour: 40, perDriveMinutes: 2, serverFault: null },
  pace: [],
  latest: null,
  ...given,
});
const board = (answers: Readonly<Record<string, unknown>> = {}, at = '/routes/month?month=2026-09') =>
  drawPage(<MonthPlanPage />, { at, route: '/routes/month', answers: { monthPlan: monthOf(), crews, properties: [], ...answers } });
const carried = (id: string) => ({
  id,
  version: 2,
  position: 1,
  locked: true,
  property: builtProperty('p1', 'x'),
  cautions: [],
  workOrders: [],
});

describe('the board of a month', () => {
  it('shows each crew’s days, what of them does not fit, and what has no day and why', async () => {
    board();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      '3 stops in this month, 50 min of driving; one thing has no day',
    );
    const today = screen.getByRole('row', { name: /Thursday 24 September/ });
    expect(within(today).getByRole('list', { name: 'Crew 1, 2 stops' }).textContent).toContain('7:05 am Quail Commons · visit');
    expect(within(today).getByText(/work 1 h 20 min of 8 h, waiting 1 h 35 min\./)).toBeTruthy();
    expect(screen.getByText(/25 min more work and driving than the day has/)).toBeTruthy();
    expect(screen.getByText(/on this day Alder Row is not open for as long as its work takes/)).toBeTruthy();
    expect(screen.getByText(/No crew can do this: trees/)).toBeTruthy();
  });

  it('says why the office’s own routing server was not used, in the reader’s language', async () => {
    const travel = { ...monthOf().travel, serverFault: 'no answer in time' };
    const answers = { monthPlan: monthOf({ travel }), crews, properties: [] };
    drawPage(<MonthPlanPage />, { at: '/routes/month?month=2026-09', route: '/routes/month', answers, language: 'es' });
    expect(await screen.findByText(/No se usó su servidor de rutas: no contestó a tiempo\./)).toBeTruthy();
  });

  it('carries a stop with the keyboard to the next place, day and crew, locks it, and takes it back', async () => {
    const { user, calls } = board({ carryStop: carried('a') });
    const chip = await screen.findByRole('button', { name: /Quail Commons/ });
    const to = async (keys: string): Promise<unknown> => {
      const before = calls.length;
      chip.focus();
      await user.keyboard(keys);
      await waitFor(() => expect(calls.slice(before).some(({ name }) => name === 'CarryStop')).toBe(true));
      return calls.filter(({ name }) => name === 'CarryStop').at(-1)?.variables['to'];
    };
    const here = { crewId: 'crew-1', day: '2026-09-24', position: 1 };
    expect(await to('{Shift>}{ArrowDown}{/Shift}')).toEqual({ ...here, position: 2, locked: true });
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(() =>
      expect(calls.filter(({ name }) => name === 'CarryStop').at(-1)?.variables['to']).toEqual({ ...here, locked: false }),
    );
    expect(await to('{Shift>}{ArrowRight}{/Shift}')).toEqual({ ...here, crewId: 'crew-2', locked: true });
    expect(await to('l')).toEqual({ ...here, locked: true });
  });

  it('says who else moved a stop meanwhile, and shows the board as it is now', async () => {
    const { user, calls } = board({
      carryStop: () => {
        throw refusal('STOP_MOVED_MEANWHILE', 'June Halvorsen moved or locked this stop meanwhile.');
      },
    });
    (await screen.findByRole('button', { name: /Quail Commons/ })).focus();
    const seen = () => calls.filter(({ name }) => name === 'MonthPlan').length;
    const before = seen();
    await user.keyboard('{Shift>}{ArrowRight}{/Shift}');
    expect((await screen.findByRole('alert')).textContent).toContain('June Halvorsen');
    await waitFor(() => expect(seen()).toBeGreaterThan(before));
  });

  it('plans the rest of today again for the crew whose day broke, and undoes it', async () => {
    const run = { id: 'plan-1', madeAt: '2026-09-24T17:05:00Z', undoneAt: null, moved: 1, unplaced: 0 };
    const { user, calls } = board({ replanDay: run, undoPlan: { ...run, undoneAt: '2026-09-24T17:06:00Z' } });
    await user.click(await screen.findByRole('button', { name: 'Plan the rest of today again: Crew 1' }));
    expect(await screen.findByText(/: one stop got another crew or day, all of the rest of today has its day\./)).toBeTruthy();
    expect(variables(calls, 'ReplanDay')).toEqual({ crewId: 'crew-1', id: expect.any(String) });
    expect(screen.queryByRole('button', { name: 'Plan the rest of today again: Crew 2' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    await waitFor(() => expect(variables(calls, 'UndoPlan')).toEqual({ id: 'plan-1' }));
  });

  it('has every controller looked at for the season, a few properties at a time, and says what came of it', async () => {
    const properties = Array.from({ length: 7 }, (_, at) => builtProperty(`p${at}`, `Property ${at}`));
    const orderSeason = ({ propertyIds }: { propertyIds: string[] }) => (propertyIds.length === 5 ? [open, waiting] : [open]);
    const { user, calls, address } = board({ properties, orderSeason });
    await user.click(await screen.findByRole('button', { name: 'Seasonal change' }));
    expect(address()).toBe('/routes/month?month=2026-09&season=yes');
    await user.click(screen.getByRole('button', { name: 'Look at all controllers' }));
    expect(await screen.findByText('All 7 properties looked at: 3 orders made.')).toBeTruthy();
    expect(calls.filter(({ name }) => name === 'OrderSeason').map((call) => call.variables['propertyIds'])).toEqual([
      ['p0', 'p1', 'p2', 'p3', 'p4'],
      ['p5', 'p6'],
    ]);
  });

  it('gives what has no day a day by hand', async () => {
    const { user, calls } = board({ placeItem: carried('z') });
    await user.click(await screen.findByRole('button', { name: 'Give it a day: Tern House' }));
    const form = screen.getByRole('dialog', { name: 'Who goes to Tern House, and when?' });
    await user.selectOptions(within(form).getByLabelText('Crew'), 'Crew 2');
    await user.click(within(form).getByRole('button', { name: 'Move it' }));
    await waitFor(() =>
      expect(variables(calls, 'PlaceItem')).toMatchObject({ month: '2026-09', itemId: 'orders p9', to: { crewId: 'crew-2' } }),
    );
  });
});

const device = (id: string, given: object = {}) => ({
  id,
  name: null,
  person: 'Dell Okafor',
  appVersion: null,
  heardAt: '2026-09-24T15:00:00Z',
  silentDays: 0,
  waiting: 0,
  photosWaiting: 0,
  refused: 0,
  oldestWaitingAt: null,
  ...given,
});
const said = (key: string, kind: string, body: object, given: object = {}) => ({
  key,
  kind,
  verdict: 'conflict',
  by: 'Inés Caldera',
  phone: 'Android 14 · 3F7A',
  body: JSON.stringify(body),
  other: null,
  stands: null,
  subject: null,
  savedAt: '2026-09-24T16:10:00Z',
  receivedAt: '2026-09-24T16:20:00Z',
  problem: null,
  property: builtProperty('p1', 'Quail Commons'),
  ...given,
});
const phones = (answers: Readonly<Record<string, unknown>>) =>
  drawPage(<PhonesPage />, { at: '/routes/phones', route: '/routes/phones', answers: { devices: [], openOperations: [], ...answers } });

describe('what phones hold', () => {
  it('tells of each phone what only it has, and which nobody has heard for long', async () => {
    phones({ devices: [device('d1'), device('d2', { person: 'Inés Caldera', waiting: 3, photosWaiting: 7, refused: 1, silentDays: 4 })] });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Nothing to decide; 10 records are on phones only');
    expect(screen.getByText('Everything written is sent.')).toBeTruthy();
    expect(screen.getByText('Holds 3 unsent records, 7 photos; one was refused.')).toBeTruthy();
    expect(screen.getByText(/Not heard for 4 days/)).toBeTruthy();
    expect(['0.9.9', '0.10', '1.0.0', null].map((version) => isOlder(version, '0.10.0'))).toEqual([true, false, false, false]);
  });

  it('shows both words with their authors, only what differs, and lets one of them stand', async () => {
    const { user, calls } = phones({
      openOperations: [
        said(
          'k1',
          'note-zone',
          { count: 3, word: 'Hedge' },
          { stands: 'sent', subject: 'North lawn', other: { count: 1, word: 'Hedge', repaired: false, by: 'Marisol Vance' } },
        ),
      ],
      chooseWord: said('k1', 'note-zone', {}),
    });
    const table = await screen.findByRole('table', { name: 'What each said' });
    expect(
      within(table)
        .getAllByRole('row')
        .map((row) => row.textContent),
    ).toEqual(['What differsInés Caldera · stands nowMarisol Vance', 'How many31']);
    await user.click(screen.getByRole('button', { name: 'Take what Marisol Vance said' }));
    await waitFor(() => expect(variables(calls, 'ChooseWord')).toEqual({ key: 'k1', word: 'other' }));
  });

  it('tells why something could not be done, and is told that somebody has looked', async () => {
    const { user, calls } = phones({
      openOperations: [
        said('k2', 'reading', {}, { verdict: 'refused', problem: { code: 'NOT_FOUND', message: 'There is no meter m9.', details: {} } }),
      ],
      settleOperation: said('k2', 'reading', {}),
    });
    expect(await screen.findByText('There is no meter m9.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Seen; do not show it again' }));
    await waitFor(() => expect(variables(calls, 'SettleOperation')).toEqual({ key: 'k2' }));
  });
});

describe('the day as it happens', () => {
  it('hears, asks now and then while it cannot, comes back, and ends with the page', () => {
    vi.useFakeTimers();
    vi.stubGlobal('EventSource', SpokenSource);
    const told: (boolean | 'changed')[] = [];
    const end = listenToDay({ onChange: () => told.push('changed'), onLive: (isLive) => told.push(isLive) });
    const [first] = SpokenSource.all as [SpokenSource];
    first.onopen();
    first.onmessage();
    vi.advanceTimersByTime(90_000);
    // What may have been missed before is asked for once; while it is told, nothing is asked.
    expect(told).toEqual(['changed', true, 'changed']);
    first.onerror();
    vi.advanceTimersByTime(30_000);
    expect(told.slice(3)).toEqual([false, 'changed']);
    first.readyState = SpokenSource.CLOSED;
    first.onerror();
    vi.advanceTimersByTime(60_000);
    expect(SpokenSource.all).toHaveLength(2);
    SpokenSource.all[1]?.onopen();
    expect(told.slice(-2)).toEqual(['changed', true]);
    end();
    const count = told.length;
    vi.advanceTimersByTime(600_000);
    expect([told.length, SpokenSource.all[1]?.readyState]).toEqual([count, SpokenSource.CLOSED]);
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('says how far today is, where each crew is, and the water in what was done', async () => {
    const route = builtStop()['route'] as { stops: { visit: unknown; workOrders: unknown[] }[] };
    const { stops } = route;
    const order = builtWorkOrder('w1', 'adjust', { state: 'done', finding: { id: 'f1', kind: 'over-programmed', litres: 37_854.11784 } });
    const [one, two] = stops as [(typeof stops)[number], (typeof stops)[number]];
    const visit = { id: 'v1', version: 1, propertyId: 'p1', arrivedAt: '2026-09-24T15:00:00Z', closedAt: '2026-09-24T15:40:00Z' };
    const day = {
      ...route,
      stops: [
        { ...one, visit, workOrders: [order] },
        { ...two, visit: { ...visit, id: 'v2', closedAt: null } },
      ],
    };
    page({ routes: [day] });
    expect(await screen.findByText(/1 of 2 stops done; one order is done/)).toBeTruthy();
    expect(screen.getByText('10,000 gal')).toBeTruthy();
    expect(screen.getByText('Asked again every half minute.')).toBeTruthy();
    expect(screen.getByText('1 of 2 stops done; at Old Mill Shops since 8:00 am.')).toBeTruthy();
  });
});

describe('the route sheet', () => {
  const sheetStop = (id: string, latitude: number | null) => ({
    ...planned(id, `Place ${id}`, 0).stop,
    property: builtProperty(`p-${id}`, `Place ${id}`, {
      latitude,
      longitude: latitude === null ? null : -120.9,
      meters: [],
      controllers: [],
    }),
  });

  it('has a card for each stop, and a sketch of those whose position is known', async () => {
    const route = {
      id: 'r1',
      version: 1,
      day: '2026-09-24',
      note: null,
      crew: builtCrew('crew-1', 'Crew 1', { startLatitude: 38, startLongitude: -121 }),
    };
    const stops = [sheetStop('a', 38.1), sheetStop('b', null), sheetStop('c', 38.2)];
    const answers = { today: [{ ...route, stops }], plannedTimes: [] };
    drawPage(<RouteSheetPage />, { at: '/routes/sheet?day=2026-09-24', route: '/routes/sheet', answers });
    const sketch = await screen.findByRole('img', { name: 'Where the 2 stops lie, in their order' });
    expect([...sketch.querySelectorAll('text')].map((text) => text.textContent)).toEqual(['1', '3']);
    expect(screen.getByText(/One stop has no position yet/)).toBeTruthy();
    expect(screen.getAllByRole('heading', { level: 3 }).map((heading) => heading.textContent)).toEqual([
      '1. Place a',
      '2. Place b',
      '3. Place c',
    ]);
  });

  it('puts north up and east right, inside the drawing, and no mark on another', () => {
    const at = (number: number, latitude: number, longitude: number) => ({ number, latitude, longitude });
    const placed = daySketch([at(1, 38, -121), at(2, 38.1, -121), at(3, 38, -120.9), at(4, 38, -120.9)], { width: 640, height: 240 });
    const [one, two, three, four] = placed as [
      (typeof placed)[number],
      (typeof placed)[number],
      (typeof placed)[number],
      (typeof placed)[number],
    ];
    expect(two.y).toBeLessThan(one.y);
    expect(three.x).toBeGreaterThan(one.x);
    expect(Math.hypot(three.x - four.x, three.y - four.y)).toBeGreaterThanOrEqual(2 * HALF);
    for (const { x, y } of placed) expect([x > HALF, x < 640 - HALF, y > HALF, y < 240 - HALF]).toEqual([true, true, true, true]);
  });
});
