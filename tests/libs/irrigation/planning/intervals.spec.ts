import { judgePlan } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import { planRuns } from '@rillbook/irrigation/planning/judge/plan-runs.js';
import type { Program, ProgramDays } from '@rillbook/irrigation/settings/settings-fact.js';
import { expect, it } from 'vitest';
import { aController, noRule, zoneInInches } from './a-controller.js';

// A timer set to every so many days waters a month's days divided by that many times, whether twelve weeks hold whole rounds of it or not.

const every = (everyDays: number): ProgramDays => ({ kind: 'every', everyDays, from: '2026-07-01' });
const program = (days: ProgramDays, station = 1, name = 'A'): Program => ({
  name,
  days,
  starts: [120],
  adjustPercent: 100,
  stations: [{ station, minutes: 30, cycles: 1, soakMinutes: 0 }],
});
const input = aController([zoneInInches(1, 0.1, 1, { storageDays: 20 }), zoneInInches(2, 0.1, 1, { storageDays: 20 })]);

it.each([2, 3, 4, 5, 6, 8, 9, 10, 11, 13, 14])('uses what every %i days give in a month', (days) => {
  const { zones } = judgePlan(input, [program(every(days))]);
  const used = (31 / days) * 30 * input.zones[0]!.flowLPerMin;
  expect(zones[0]!.usedLitres).toBeCloseTo(used, 6);
});

it('holds whole rounds of two intervals beside weekdays, and of no more than sixty weeks', () => {
  const round = (...days: ProgramDays[]) =>
    planRuns(
      days.map((each, at) => program(each, 1 + (at % 2), `P${at}`)),
      input.traits,
      input.month,
    ).days;
  expect(round({ kind: 'daily' })).toBe(7);
  expect(round(every(3), { kind: 'weekdays', weekdays: ['Mon'] })).toBe(84);
  expect(round(every(5))).toBe(35);
  expect(round(every(5), every(9))).toBe(315);
  expect(round(every(11), every(13))).toBe(84);
  expect(round(every(5), { kind: 'odd' })).toBe(84);
});

it('counts a rule that is broken by an interval as often as by its weeks', () => {
  const oneDay = aController(input.zones, { rules: [{ ...noRule, name: 'one day', daysPerWeek: 1 }] });
  expect(judgePlan(oneDay, [program(every(8))]).breaches).toEqual([]);
  expect(judgePlan(oneDay, [program(every(5))]).breaches).toMatchObject([{ rule: 'one day', kind: 'too many days a week' }]);
});
