import { openHours } from '@rillbook/irrigation/planning/layout/water-window.js';
import type { ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import { planFrame, preparedZone } from '@rillbook/irrigation/planning/pricing/prepared-zone.js';
import { runCosts } from '@rillbook/irrigation/planning/pricing/run-costs.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aController, noRule } from '../a-controller.js';

/** From 22:00 to 6:00. */
const NIGHT = { from: 1320, until: 360 };
const DAILY = [1, 1, 1, 1, 1, 1, 1];

/** Ten litres a minute and a hundred a day. */
const zoneOf = (more: Partial<ZoneToPlan>): ZoneToPlan => ({
  zoneId: 'zone 1',
  station: 1,
  plants: null,
  method: null,
  needLitresPerDay: 100,
  flowLPerMin: 10,
  storageDays: null,
  intake: null,
  fillMinutes: 0,
  ...more,
});

function costs(
  more: Partial<ZoneToPlan>,
  gaps: readonly number[],
  starts: number,
  traits: Partial<ControllerTraits> = {},
  maxMinutes: number | null = null,
) {
  const zone = zoneOf(more);
  const input = aController([zone]);
  const held = { ...input, traits: { ...input.traits, maxMinutes: null, ...traits } };
  const frame = planFrame(held, 31, openHours(NIGHT, [], [zone]));
  const rules = maxMinutes === null ? [] : [{ ...noRule, maxMinutes }];
  return runCosts(preparedZone(zone, rules, frame, null), gaps, starts, frame);
}

describe('the longest run of a start', () => {
  it.each<[string, number, readonly number[], number]>([
    ['all of the night where there is one', 480, [2], 1],
    ['half of it where there are two every night', 240, DAILY, 2],
    // A timer has its days for all starts: before midnight lie two hours of a date, after it six; two of three hours lie after it.
    ['what a date holds of them where there are two on some dates', 180, [2], 2],
    ['what a date holds of three', 120, [3, 4], 3],
  ])('is %s: %i minutes', (_what, most, gaps, starts) => {
    expect(costs({ needLitresPerDay: 3000 }, gaps, starts).most).toBe(most);
  });

  it('is what the timer counts, in its steps, and what a rule leaves of the day', () => {
    expect(costs({}, DAILY, 1, { maxMinutes: 59, minuteStep: 5 }).most).toBe(11);
    expect(costs({}, DAILY, 2, {}, 31).most).toBe(15);
    expect(costs({}, DAILY, 1, { startsPerProgram: 0 })).toMatchObject({ most: 0, bends: [0], prices: [expect.closeTo(44_175, 6)] });
  });

  it('of several is no more than the soil takes from the first to the end of the hours', () => {
    // Eight hours take 240 mm at 30 mm/h and hold 5 mm more: 245 minutes at 1 mm a minute, in two starts.
    const intake = { precipitationRate: millimetresPerHour(60), intakeRate: millimetresPerHour(30), surfaceAccumulation: millimetres(5) };
    expect(costs({ intake, needLitresPerDay: 3000 }, DAILY, 2).most).toBe(122);
    const fast = { ...intake, intakeRate: millimetresPerHour(60) };
    expect(costs({ intake: fast, needLitresPerDay: 3000 }, DAILY, 2).most).toBe(240);
  });
});

describe('the price of a run', () => {
  it('is thirst, waste and waterings of the month, by hand', () => {
    const { priceOf } = costs({ fillMinutes: 2 }, DAILY, 1);
    // Twelve minutes put out the need and fill the line with 20 L; ten lack 20 L of it; none lacks all, felt 1 + 0.75 + 3 times.
    expect(priceOf(12)).toBeCloseTo(31 * (20 + 1), 6);
    expect(priceOf(10)).toBeCloseTo(31 * (3 * 20 + 20 + 1), 6);
    expect(priceOf(0)).toBeCloseTo(31 * 3 * 4.75 * 100, 6);
    // Two starts fill the line twice.
    expect(costs({ fillMinutes: 2 }, DAILY, 2).priceOf(7)).toBeCloseTo(31 * (40 + 1), 6);
  });

  it('bends last where a run gives all that the roots can take up between waterings', () => {
    expect(costs({}, [3], 1).bends.at(-1)).toBe(30);
    expect(costs({ storageDays: 2 }, [3], 1).bends.at(-1)).toBe(20);
    // In two starts, each after two minutes of filling.
    expect(costs({ storageDays: 2, fillMinutes: 2 }, [3], 2).bends.at(-1)).toBe(12);
    expect(costs({}, [3], 1, { maxMinutes: 25 }).bends.at(-1)).toBe(25);
  });

  it('bends first at the shortest run that is one: a step, and what fills the line', () => {
    expect(costs({}, [3], 1).bends.slice(0, 2)).toEqual([0, 1]);
    expect(costs({ fillMinutes: 2 }, [3], 1).bends.slice(0, 2)).toEqual([0, 2]);
    expect(costs({ fillMinutes: 2 }, [3], 1, { minuteStep: 0.5 }).bends.slice(0, 2)).toEqual([0, 4]);
    expect(costs({ fillMinutes: 2 }, [3], 1, { minuteStep: 3 }).bends.slice(0, 2)).toEqual([0, 1]);
  });

  it('is straight between its bends, and no longer run is cheaper than the cheapest of them', () => {
    const gaps = fc.constantFrom([1], [2], [3], [7], [3, 4], [2, 2, 3], [1, 6], DAILY);
    const zone = fc.record({
      needLitresPerDay: fc.double({ min: 20, max: 400, noNaN: true }),
      storageDays: fc.option(fc.double({ min: 0.5, max: 9, noNaN: true })),
      fillMinutes: fc.constantFrom(0, 0, 2),
    });
    fc.assert(
      fc.property(zone, gaps, fc.constantFrom(1, 2), fc.constantFrom(1, 3), (of, between, starts, minuteStep) => {
        const { bends, prices, most, priceOf } = costs(of, between, starts, { minuteStep });
        expect(prices).toEqual(bends.map(priceOf));
        expect(Math.max(...bends)).toBeLessThanOrEqual(most);
        const cheapest = Math.min(...prices);
        for (let steps = 0; steps <= most; steps += 1) expect(priceOf(steps)).toBeGreaterThanOrEqual(cheapest - 1e-6 * (1 + cheapest));
        bends.slice(2).forEach((high, at) => {
          const low = bends[at + 1] as number;
          for (let steps = low; steps <= high; steps += 1) {
            const straight = priceOf(low) + ((priceOf(high) - priceOf(low)) * (steps - low)) / (high - low);
            expect(Math.abs(priceOf(steps) - straight)).toBeLessThanOrEqual(1e-6 * (1 + straight));
          }
        });
      }),
      { numRuns: 60 },
    );
  });
});
