import { weekdayPattern } from '@rillbook/irrigation/planning/days/day-pattern.js';
import { intervalsWithin } from '@rillbook/irrigation/planning/days/pattern-classes.js';
import { judgePlan } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import { keepsAll } from '@rillbook/irrigation/planning/judge/plan-judgement.js';
import { leastChange } from '@rillbook/irrigation/planning/offers/least-change.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { aController, noRule, zoneInInches } from './a-controller.js';

const STEP = 20;
/** One, two, three ... seven days a week, as evenly as they go. */
const EVEN_WEEKS = [0b0000001, 0b0001001, 0b0010101, 0b1010101, 0b0011111, 0b0111111, 0b1111111];

const program = (name: string, station: number, minutes: number): Program => ({
  name,
  days: { kind: 'weekdays', weekdays: ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] },
  starts: [60 * station],
  adjustPercent: 100,
  stations: [{ station, minutes, cycles: 1, soakMinutes: 0 }],
});

// A low month on a timer with one percent for all: lawn that cannot wait, and shrubs that can, set for July.
const lowMonth = (scope: 'controller' | 'program') => {
  const zones = [zoneInInches(1, 0.05, 1, { storageDays: 3 }), zoneInInches(2, 0.02, 1, { storageDays: 14 })];
  const base = aController(zones, {
    month: '2026-11',
    present: [program('A', 1, 40), program('B', 2, 20)],
    rules: [{ ...noRule, daysPerWeek: 6 }],
  });
  return { ...base, traits: { ...base.traits, programs: 2, adjustScope: scope, adjustStepPercent: STEP } };
};

describe('percent and days', () => {
  it('on one percent for all costs no more than any percent with any even days of each program', () => {
    const input = lowMonth('controller');
    const offer = leastChange(input);
    const [a, b] = input.present as readonly Program[];
    const all = Array.from({ length: 200 / STEP }, (_, at) => (at + 1) * STEP).flatMap((adjustPercent) =>
      EVEN_WEEKS.flatMap((one) =>
        EVEN_WEEKS.map((other) =>
          judgePlan(input, [
            { ...(a as Program), adjustPercent, days: weekdayPattern(one).days },
            { ...(b as Program), adjustPercent, days: weekdayPattern(other).days },
          ]),
        ),
      ),
    );
    const best = Math.min(...all.filter(keepsAll).map(({ cost }) => cost));
    expect(offer?.kind).toBe('percent and days');
    expect(offer?.judgement.cost).toBeLessThanOrEqual(best + 1e-6);
    expect(offer?.judgement.wastedLitres).toBeLessThan(0.15 * (offer?.judgement.neededLitres ?? 0));
    expect(new Set(offer?.programs.map(({ adjustPercent }) => adjustPercent)).size).toBe(1);
  });

  it('takes intervals that roots bridge, where no rule binds days', () => {
    const zone = zoneInInches(1, 0.025, 1, { storageDays: 4.5 });
    const base = aController([zone], { month: '2026-11', present: [program('A', 1, 6)] });
    const offer = leastChange({ ...base, traits: { ...base.traits, adjustStepPercent: 100, maxAdjustPercent: 100 } });
    expect(offer).toMatchObject({ kind: 'percent and days', programs: [{ days: { kind: 'every', everyDays: 4 } }] });
    expect(intervalsWithin([zone])).toEqual([2, 3, 4]);
    expect(intervalsWithin([{ storageDays: 90 }]).at(-1)).toBe(28);
    expect(intervalsWithin([{ storageDays: 0.5 }])).toEqual([]);
  });
});
