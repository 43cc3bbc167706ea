import { shareOfInterval, weightBesideSteadyUse } from '@rillbook/metering/intervals/apportion-interval.js';
import { contradictions } from '@rillbook/metering/intervals/contradictions.js';
import { meteredDays } from '@rillbook/metering/intervals/metered-days.js';
import { oneSourcePerInstant } from '@rillbook/metering/intervals/one-source-per-instant.js';
import type { IntervalSource, UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** A cut interval's uncertainty: by its share, and by the run nearest to the cut in mean days. */
const CUT = { share: 0.2, run: 1.25 };

const unknown = () => null;
const interval = (fromLocalDay: number, toLocalDay: number, litres: number, source: IntervalSource = 'readings'): UsageInterval => ({
  fromLocalDay,
  toLocalDay,
  litres,
  sdLitres: 0,
  source,
});
const total = (intervals: readonly UsageInterval[], first: number, days: number, weight: (day: number) => number | null = unknown) =>
  meteredDays(intervals, first, days, () => weight, CUT).days.reduce((sum, { litres }) => sum + litres, 0);

describe('apportioning to days', () => {
  it('follows evapotranspiration where it is known, a day of unknown weight being the mean', () => {
    const weight = (day: number) => [2, 6, null, 4][day] ?? null;
    const days = meteredDays([interval(0, 4, 160)], 0, 4, () => weight, CUT).days.map(({ litres }) => litres);
    expect(days).toEqual([20, 60, 40, 40].map((litres) => expect.closeTo(litres, 9)));
  });

  it('takes a steady use as the same every day: only what is beside it follows evapotranspiration', () => {
    const weight = (day: number) => (day < 28 ? 1.5 : 3.5);
    const twoMonths = (litres: number) => [interval(0, 59, litres)];
    const halves = (litres: number, steady: number) =>
      [[0, 28] as const, [28, 31] as const].map(([first, days]) =>
        meteredDays(twoMonths(litres), first, days, weightBesideSteadyUse(steady, weight), CUT).days.reduce(
          (sum, day) => sum + day.litres,
          0,
        ),
      );
    // All of it ran indoors, a thousand litres a day: nothing follows the weather, also where the bill is a little low.
    expect(halves(59_000, 1000)).toEqual([expect.closeTo(28_000, 6), expect.closeTo(31_000, 6)]);
    expect(halves(57_820, 1000)).toEqual([expect.closeTo(27_440, 6), expect.closeTo(30_380, 6)]);
    // Beside it 15,050 L were watered: 28 days of 1.5 and 31 of 3.5 are 42 and 108.5 parts.
    expect(halves(74_050, 1000)).toEqual([expect.closeTo(28_000 + 4200, 6), expect.closeTo(31_000 + 10_850, 6)]);
    expect(halves(15_050, 0)).toEqual([expect.closeTo(4200, 6), expect.closeTo(10_850, 6)]);
  });

  it('counts parts of days', () => {
    const { days } = meteredDays([interval(0.5, 2.25, 175)], 0, 3, () => unknown, CUT);
    expect(days.map(({ litres }) => litres)).toEqual([50, 100, 25].map((litres) => expect.closeTo(litres, 9)));
    expect(days.map(({ coveredShare }) => coveredShare)).toEqual([0.5, 1, 0.25]);
  });

  it('conserves volume, whatever the weights', () => {
    const weights = fc.array(fc.option(fc.double({ min: 0, max: 10, noNaN: true }), { nil: null }), { minLength: 40, maxLength: 40 });
    const span = fc.tuple(fc.double({ min: 0, max: 39, noNaN: true }), fc.double({ min: 0.01, max: 30, noNaN: true }));
    fc.assert(
      fc.property(weights, span, (byDay, [from, length]) => {
        const to = Math.min(40, from + length);
        fc.pre(to > from);
        expect(total([interval(from, to, 1000)], 0, 40, (day) => byDay[day] ?? null)).toBeCloseTo(1000, 6);
      }),
    );
  });

  it('gives no share to no time, wherever it lies', () => {
    for (const at of [1, 1.5, 2]) expect(shareOfInterval([1, 2], [at, at], unknown)).toBe(0);
  });

  it('refuses a part outside the interval by code', () => {
    expect(() => shareOfInterval([1, 2], [0, 2], unknown)).toThrow(expect.objectContaining({ code: 'INTERVAL_OUT_OF_DOMAIN' }));
  });

  it('is surer of whole intervals than of divided ones', () => {
    expect(meteredDays([interval(0, 30, 900)], 0, 30, () => unknown, CUT).apportioningVariance).toBeCloseTo(0, 9);
    expect(Math.sqrt(meteredDays([interval(0, 30, 900)], 0, 15, () => unknown, CUT).apportioningVariance)).toBeCloseTo(
      Math.hypot(0.2 * 0.25 * 900, 1.25 * 30),
      6,
    );
  });
});

describe('what cutting adds to the uncertainty', () => {
  const variances = (from: number, to: number, litres: number, sdLitres: number) => {
    const { resolutionVariance, apportioningVariance } = meteredDays(
      [{ ...interval(from, to, litres), sdLitres }],
      10,
      10,
      () => unknown,
      CUT,
    );
    return [resolutionVariance, apportioningVariance];
  };

  it('is by the share and by the run at each cut, whichever side it is on', () => {
    // A third of 3,000 L, cut on both sides; a mean day is 100 L.
    expect(variances(0, 30, 3000, 9)).toEqual([
      expect.closeTo(3 ** 2, 9),
      expect.closeTo((0.2 * (1 / 3) * (2 / 3) * 3000) ** 2 + 2 * (1.25 * 100) ** 2, 6),
    ]);
    const cutOnce = expect.closeTo((0.2 * 0.25 * 2000) ** 2 + (1.25 * 100) ** 2, 6) as number;
    expect(variances(0, 20, 2000, 0)).toEqual([0, cutOnce]);
    expect(variances(10, 30, 2000, 0)).toEqual([0, cutOnce]);
    expect(variances(10, 20, 1000, 5)).toEqual([expect.closeTo(25, 9), expect.closeTo(0, 9)]);
  });

  it('of less than a day is no more than all of its water', () => {
    // Half of 200 L in half a day: a whole day of it would be 400 L.
    expect(variances(9.75, 10.25, 200, 0)).toEqual([0, expect.closeTo((0.2 * 0.25 * 200) ** 2 + (1.25 * 200) ** 2, 6)]);
  });

  it('leaves a day that its pieces cover whole, whatever a sum of fractions comes to', () => {
    const tenths = Array.from({ length: 10 }, (_, at) => interval(10 + at / 10, 10 + (at + 1) / 10, 5, 'usage'));
    expect(meteredDays(tenths, 10, 1, () => unknown, CUT).days[0]?.coveredShare).toBe(1);
    expect(meteredDays(tenths.slice(1), 10, 1, () => unknown, CUT).days[0]?.coveredShare).toBeCloseTo(0.9, 9);
  });
});

describe('one source per instant', () => {
  it('is usage, else readings, else bills, and never a sum', () => {
    const all = [interval(0, 30, 3000, 'bills'), interval(10, 20, 500), interval(12, 13, 7, 'usage')];
    expect(total(all, 0, 30)).toBeCloseTo(1000 + 100 + 7 + 350 + 1000, 6);
    expect(total([...all].reverse(), 0, 30)).toBeCloseTo(2457, 6);
  });

  it('keeps an hourly feed whole', () => {
    const hours = Array.from({ length: 48 }, (_, hour) => interval(hour / 24, (hour + 1) / 24, 10, 'usage'));
    expect(total([...hours, interval(0, 2, 9999)], 0, 2)).toBeCloseTo(480, 6);
  });

  it('covers what any source covers, once', () => {
    const source = fc.constantFrom<IntervalSource>('usage', 'readings', 'bills');
    const some = fc.array(fc.record({ from: fc.integer({ min: 0, max: 40 }), length: fc.integer({ min: 1, max: 20 }), source }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(some, (spans) => {
        const stretches = oneSourcePerInstant(spans.map(({ from, length, source: of }) => interval(from, from + length, 1, of)));
        for (let day = 0; day < 60; day += 1) {
          const covering = stretches.filter(({ from, to }) => from <= day && day < to);
          const sources = spans.filter(({ from, length }) => from <= day && day < from + length).map(({ source: of }) => of);
          expect(covering).toHaveLength(sources.length > 0 ? 1 : 0);
          const best = (['usage', 'readings', 'bills'] as const).find((of) => sources.includes(of));
          expect(covering[0]?.interval.source).toBe(best);
        }
      }),
    );
  });
});

describe('contradictions', () => {
  it('are sources that differ beyond resolution for the same time', () => {
    const readings = [interval(0, 15, 1000), interval(15, 31, 1000)];
    expect(contradictions([...readings, interval(0, 31, 2040, 'bills')], () => unknown)).toEqual([]);
    expect(contradictions([...readings, interval(0, 31, 3000, 'bills')], () => unknown)).toEqual([
      { fromLocalDay: 0, toLocalDay: 31, source: 'bills', litres: 3000, betterSource: 'readings', betterLitres: 2000 },
    ]);
  });

  it('allow for a coarse register', () => {
    const coarse = { ...interval(0, 31, 2000), sdLitres: 500 };
    expect(contradictions([coarse, interval(0, 31, 3000, 'bills')], () => unknown)).toEqual([]);
  });

  it('are not claimed where the better source has a hole', () => {
    expect(contradictions([interval(0, 10, 1000), interval(0, 31, 9000, 'bills')], () => unknown)).toEqual([]);
  });
});
