import { expect, it } from 'vitest';
import type { Came, PlanItem, PlanMaterial } from '../../../apps/api/src/features/fieldwork/month-planning/material/plan-item.js';
import { crewDayOf, restOfToday } from '../../../apps/api/src/features/fieldwork/month-planning/material/plan-input-of.js';
import { donePart, joined, plannedPart } from '../../../apps/api/src/features/fieldwork/month-planning/shown/part-of-day.js';

// What is left of a day goes on from where the crew really is, at the time at which it really can.

const DAY = '2026-07-06';
const HOUR = 60;
const crew = { id: 'crew', skills: [], dayStartsMinute: 7 * HOUR, dayEndsMinute: 15 * HOUR, breakMinutes: 30, workingDays: [1] };

const item = (name: string, position: number, came: Came | null): PlanItem => ({
  ...{ id: `stop ${name}`, propertyId: name, stopId: name, locked: false, visitDueOn: null },
  place: { crewId: 'crew', day: DAY, position },
  visited: came !== null,
  came,
  orders: [{ id: `order ${name}`, version: 1, kind: 'repair', state: 'given out', minutes: 60, notBefore: null, dueOn: null, skills: [] }],
});
const known = (...items: readonly PlanItem[]): PlanMaterial => ({
  ...{ from: DAY, until: DAY, items, crews: [crew as never] },
  properties: new Map(
    items.map(({ propertyId: id }) => [id, { id, position: null, everyDays: null, visitMinutes: null, skills: [], hours: [] }]),
  ),
  pace: new Map([['crew', { factor: 1.5, visits: 9 }]]),
});
/** The yard, then a, b and c; every way takes ten minutes. */
const places = {
  positions: [],
  ofCrew: new Map([['crew', 0]]),
  ofProperty: new Map([
    ['a', 1],
    ['b', 2],
    ['c', 3],
  ]),
};
const travel = { size: 4, seconds: Float64Array.from({ length: 16 }, (_, at) => (at % 5 === 0 ? 0 : 600)), metres: null };
const dayNumber = Date.parse(`${DAY}T00:00:00Z`) / 86_400_000;
const whole = crewDayOf(crew as never, dayNumber, places);
const rest = (minute: number, ...items: readonly PlanItem[]) => restOfToday(known(...items), whole, { places, minute });

it('goes on from where the crew came to last, by the clock and not by the order of the list', () => {
  const [a, b] = [item('a', 1, { fromMinute: 600, untilMinute: 640 }), item('b', 2, { fromMinute: 430, untilMinute: 500 })];
  expect(rest(660, a, b)).toMatchObject({ startPlace: 1, opensS: 660 * 60, mostLoad: whole.mostLoad - 2 });
  expect(rest(400)).toMatchObject({ startPlace: 0, opensS: 7 * HOUR * 60 });
});

it('waits for the end of the work that is under way: its estimate at the crew’s own pace, and not before now', () => {
  const under = item('a', 1, { fromMinute: 600, untilMinute: null });
  // 60 minutes estimated take this crew 90.
  expect(rest(620, under).opensS).toBe(690 * 60);
  expect(rest(720, under).opensS).toBe(720 * 60);
});

it('shows what was done with its own times, and the rest from now', () => {
  const items = [
    item('a', 1, { fromMinute: 600, untilMinute: 640 }),
    item('b', 2, { fromMinute: 430, untilMinute: 500 }),
    item('c', 3, null),
  ];
  const rows = new Map(
    ['a', 'b', 'c'].map((id) => [id, { id, version: 1, position: 1, locked: false, routeId: 'r', propertyId: id } as never]),
  );
  const facts = { known: known(...items), places, travel: travel as never, rows, now: { day: DAY, minute: 660 } };
  const done = donePart(whole, items.slice(0, 2), facts);
  const day = joined(done, plannedPart(rest(660, ...items), items.slice(2), facts));
  expect(day.stops.map(({ stop, beginMinute, endMinute }) => [stop.id, beginMinute, endMinute])).toEqual([
    ['b', 430, 500],
    ['a', 600, 640],
    // Ten minutes of driving, then 60 minutes at the crew's pace.
    ['c', 670, 760],
  ]);
  expect(day).toMatchObject({ leavesMinute: 420, homeMinute: 770, workMinutes: 70 + 40 + 90, driveMinutes: 40, breaches: [] });
});
