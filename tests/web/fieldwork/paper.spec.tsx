import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { RouteSheetPage } from '../../../apps/web/src/features/fieldwork/routes/sheet/RouteSheetPage.js';
import { builtCrew, builtProperty } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { builtController, builtMeter, order, property } from './built-stop.js';

// What a crew needs without a phone: what to set, what the meter showed last, which zones to walk, and room to write.

afterEach(cleanup);

const route = { id: 'r1', version: 1, day: '2026-09-24', note: null, crew: builtCrew('crew-1', 'Crew 1', {}) };
const stop = (at: object, workOrders: readonly object[] = [order]) => ({
  ...{ id: 'st1', version: 1, position: 1, locked: false, cautions: [], visit: null },
  property: { ...property, ...at },
  workOrders,
});
let plannedTimes: readonly object[] = [];
afterEach(() => {
  plannedTimes = [];
});
const sheet = (...stops: readonly object[]) =>
  drawPage(<RouteSheetPage />, {
    at: '/routes/sheet?day=2026-09-24',
    route: '/routes/sheet',
    answers: { today: [{ ...route, stops }], plannedTimes },
  });
const textsOf = (table: HTMLElement) =>
  within(table)
    .getAllByRole('row')
    .map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent));

it('prints what to set beside what is set, with what differs marked, and a column to write in', async () => {
  sheet(stop({}));
  const table = await screen.findByRole('table', { name: 'Program B' });
  expect(textsOf(table)).toEqual([
    ['Program B', 'planned', 'now', 'found or left otherwise'],
    ['▸ Days', '5 daysM T Th F Su', '7 daysevery day', ''],
    ['▸ 1 north', '32 min', '36 min', ''],
    ['2 south', '25 min', '25 min', ''],
    ['Start', '3:00 am', '3:00 am', ''],
    ['Percent', '100', '100', ''],
  ]);
  expect(screen.getByText(/^Planned: on\. /).textContent).toBe('Planned: on. Now: on, as left, Tue 15 Sep, 1:00 pm.');
  for (const tick of ['set as planned', 'left as it was', 'otherwise, as written']) expect(screen.getByText(tick)).toBeTruthy();
});

it('prints the last register of each meter in use, that of a corrected reading left out', async () => {
  const reading = (id: string, readAt: string, register: number, replacedById: string | null = null) => ({
    ...{ id, meterId: 'm1', readAt, register, replacedById, source: 'crew', judgement: 'ok', findings: [], recordedAt: readAt },
  });
  sheet(
    stop({
      meters: [
        builtMeter({
          readings: [
            reading('a', '2026-09-01T21:00:00Z', 18000),
            reading('b', '2026-09-15T21:00:00Z', 18715.9),
            reading('c', '2026-09-16T21:00:00Z', 99999, 'd'),
          ],
        }),
        builtMeter({ id: 'm2', name: 'New', readings: [] }),
        builtMeter({ id: 'm3', name: 'Gone', removedOn: '2026-01-01' }),
      ],
    }),
  );
  expect((await screen.findByText(/^Register of Irrigation/)).textContent).toMatch(/last 18,715\.9 CCF, Tue 15 Sep, 2:00 pm/);
  expect(screen.getByText(/^Register of New/).textContent).toContain('no reading yet');
  expect(screen.queryByText(/Register of Gone/)).toBeNull();
});

it('prints the zones in the order of the walk with a column for each thing to look for', async () => {
  sheet(stop({}));
  const table = await screen.findByRole('table', { name: 'Zone walk: how many' });
  expect(textsOf(table).map(([first]) => first)).toEqual(['Zone walk: how many', '1 north', '2 south']);
  expect(textsOf(table)[0]).toEqual([
    ...['Zone walk: how many', 'Broken head', 'Leak', 'Clogged nozzle', 'Overspray', 'Poor coverage', 'Wilting plants'],
    'Where, and what else',
  ]);
});

it('leaves room for programs that nobody has recorded, and says that there is no plan', async () => {
  sheet(stop({ controllers: [builtController({ plannedSettings: null, presentSettings: null })] }));
  const table = await screen.findByRole('table', { name: 'Nothing is on record' });
  expect(textsOf(table).map(([first]) => first)).toEqual(['Nothing is on record', 'Days', '1 north', '2 south', 'Start', 'Percent']);
  expect(textsOf(table)[0]).toEqual(['Nothing is on record', 'A', 'B']);
  expect(screen.getByText(/There is no plan: write what you leave on it/)).toBeTruthy();
  expect(screen.queryByText('set as planned')).toBeNull();
});

it('lists the whole day on the first page, and lines for how the stop ended on each card', async () => {
  sheet(stop({}), {
    ...stop({}, []),
    id: 'st2',
    property: builtProperty('p2', 'Old Mill Shops', { meters: [], controllers: [], zones: [] }),
  });
  const list = await screen.findByRole('table', { name: 'The stops in their order' });
  const [, first, second] = textsOf(list);
  expect(first![0]).toMatch(/^1\. Quail Commons/);
  expect(first!.slice(1)).toEqual([expect.stringContaining('Set program B as planned'), '45 min', '']);
  expect(second!.slice(1)).toEqual(['Visit', '', '']);
  for (const line of ['Done', 'Left for another day, and why', 'Minutes of work, all persons together', 'Materials used'])
    expect(screen.getAllByText(line, { selector: 'dt' })).toHaveLength(2);
});

it('prints when to be at a stop, and that day’s hours of its gate or school, on the list and on the card', async () => {
  const hours = [
    { kind: 'open', weekdays: [1, 2, 3, 4, 5], fromMinute: 420, untilMinute: 900 },
    { kind: 'closed', weekdays: [4], fromMinute: 450, untilMinute: 510 },
    { kind: 'open', weekdays: [6], fromMinute: 600, untilMinute: 720 },
  ];
  plannedTimes = [{ stop: { id: 'st1' }, beginMinute: 515, endMinute: 560, lateMinutes: 0, visited: false }];
  sheet(stop({ visitTerms: { version: 1, everyDays: 7, visitMinutes: 40, skills: [], hours } }));
  // 24 September 2026 is a Thursday.
  const words = 'Planned 8:35 am to 9:20 am; open 7:00 am to 3:00 pm; nobody may work 7:30 am to 8:30 am';
  expect(await screen.findAllByText(words)).toHaveLength(2);
});

it('prints that a stop is late for its hours, or cannot be that day, and nothing where no time is known', async () => {
  const at = (id: string, lateMinutes: number | null) => ({ stop: { id }, beginMinute: 515, endMinute: 560, lateMinutes, visited: false });
  plannedTimes = [at('st1', 20), at('st2', null)];
  sheet(stop({}), { ...stop({}), id: 'st2' }, { ...stop({}), id: 'st3' });
  expect(await screen.findAllByText('Planned 8:35 am to 9:20 am; 20 min after its hours')).toHaveLength(2);
  expect(screen.getAllByText('Planned 8:35 am to 9:20 am; not open long enough on this day')).toHaveLength(2);
  expect(screen.getAllByText(/^Planned 8:35/)).toHaveLength(4);
});
