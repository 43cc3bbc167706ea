import { fullProgram } from '@rillbook/irrigation/planning/offers/full-program.js';
import type { PlanInput, ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import { describe, expect, it } from 'vitest';
import { numbersFrom } from '../../../support/planning/controllers.mjs';
import { aController, noRule } from './a-controller.js';

const STEP = 10;
const MOST_STEPS = 6;
const PRICES = { thirst: 3, waste: 1, keyPress: 10, watering: 1 };
const DAYS = 31;
const OPEN = ['Mon', 'Wed', 'Thu', 'Sat'] as const;
const ALL = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

// Small controllers on which everything can be tried: three zones, two programs, four weekdays, steps of ten minutes.
function small(seed: number, hours: number): PlanInput {
  const next = numbersFrom(seed);
  const zones: ZoneToPlan[] = [1, 2, 3].map((station) => {
    const flowLPerMin = 5 + next() * 20;
    return {
      zoneId: `zone ${station}`,
      station,
      plants: null,
      method: null,
      flowLPerMin,
      needLitresPerDay: flowLPerMin * (2 + next() * 15),
      storageDays: 1.5 + next() * 5,
      intake: null,
      fillMinutes: 0,
    };
  });
  const controller = aController(zones);
  return {
    ...controller,
    traits: { ...controller.traits, programs: 2, minuteStep: STEP, maxMinutes: STEP * MOST_STEPS },
    rules: [{ ...noRule, allowedDays: { kind: 'weekdays', weekdays: [...OPEN] } }],
    window: { from: 0, until: hours },
    weights: PRICES,
  };
}

// The price of a run, by walking a settled year day by day.
function priceOf(zone: ZoneToPlan, mask: number, steps: number): number {
  const need = zone.needLitresPerDay / zone.flowLPerMin;
  const storage = need * (zone.storageDays as number);
  let [depletion, unmet, lost, waterings] = [storage / 2, 0, 0, 0];
  for (let day = 0; day < 7 * 120; day += 1) {
    if (day === 7 * 119) [unmet, lost, waterings] = [0, 0, 0];
    if (mask & (1 << (day % 7)) && steps > 0) {
      depletion -= steps * STEP;
      waterings += 1;
    }
    lost += Math.max(0, -depletion);
    depletion = Math.max(0, depletion) + need;
    unmet += Math.max(0, depletion - storage);
    depletion = Math.min(depletion, storage);
  }
  // From a quarter of its need on a zone feels what it lacks twice, from half of it on eight times.
  const felt = unmet + Math.max(0, unmet - 0.25 * 7 * need) + 6 * Math.max(0, unmet - 0.5 * 7 * need);
  const weekly = zone.flowLPerMin * (PRICES.thirst * felt + PRICES.waste * lost) + PRICES.watering * waterings;
  return (weekly * DAYS) / 7 + (steps > 0 ? PRICES.keyPress : 0);
}

function bestOfAll({ zones, window }: PlanInput): number {
  const masks = Array.from({ length: 127 }, (_, at) => at + 1).filter((mask) =>
    ALL.every((day, at) => !(mask & (1 << at)) || OPEN.some((open) => open === day)),
  );
  const prices = zones.map((zone) => masks.map((mask) => Array.from({ length: MOST_STEPS + 1 }, (_, steps) => priceOf(zone, mask, steps))));
  let best = Number.POSITIVE_INFINITY;
  masks.forEach((one, first) => {
    masks.slice(first).forEach((other, at) => {
      const second = first + at;
      const limits = [...new Set(ALL.map((_, day) => [one, other].map((mask) => (mask >> day) & 1).join()))].map((each) =>
        each.split(',').map(Number),
      );
      const place = (zone: number, minutes: readonly [number, number], cost: number) => {
        if (cost >= best) return;
        if (limits.some(([a, b]) => (a as number) * minutes[0] + (b as number) * minutes[1] > window.until)) return;
        if (zone === zones.length) {
          const used = Number(minutes[0] > 0) + Number(minutes[1] > 0);
          best = Math.min(best, cost + used * PRICES.keyPress);
          return;
        }
        for (let steps = 0; steps <= MOST_STEPS; steps += 1) {
          place(zone + 1, [minutes[0] + steps * STEP, minutes[1]], cost + (prices[zone]?.[first]?.[steps] as number));
          if (steps > 0) place(zone + 1, [minutes[0], minutes[1] + steps * STEP], cost + (prices[zone]?.[second]?.[steps] as number));
        }
      };
      place(0, [0, 0], 0);
    });
  });
  return best;
}

describe('full program against everything that could be tried', () => {
  it.each([1, 2, 3, 4, 5, 6])('finds the cheapest where the hours are long (world %i)', (seed) => {
    const input = small(seed, 360);
    const found = fullProgram(input);
    const best = bestOfAll(input);
    expect(found.cost).toBeCloseTo(best, 3);
    expect(found.bound).toBeCloseTo(best, 3);
  });

  it.each([11, 12, 13, 14, 15, 16])('keeps its bound below the cheapest where the hours are short (world %i)', (seed) => {
    const input = small(seed, 70);
    const found = fullProgram(input);
    const best = bestOfAll(input);
    expect(found.bound).toBeLessThanOrEqual(best + 1e-3);
    expect(found.cost).toBeGreaterThanOrEqual(best - 1e-3);
    expect(found.cost).toBeLessThanOrEqual(best * 1.01 + 1e-3);
  });
});
