import { SEASON_SUMS, seasonByMonth } from '@rillbook/agronomy/water-balance/season/season-by-month.kernel.js';
import { seasonBalance } from '@rillbook/agronomy/water-balance/season/season-balance.js';
import { curveNumberRetention } from '@rillbook/agronomy/water-balance/rain/curve-number-runoff.js';
import { totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dateOf, depth, number, perMetre } from './random-season.js';

const day = fc.record({
  eto: depth(12),
  rain: fc.oneof({ weight: 3, arbitrary: fc.constant(millimetres(0)) }, { weight: 1, arbitrary: depth(90) }),
  minutes: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: number(0.1, 90) }),
});

const zone = fc.record({
  plantCoefficient: number(0, 1.3),
  availableWater: number(20, 250).map(perMetre),
  rootDepth: number(50, 1500).map(millimetres),
  rootedFraction: number(0.05, 1),
  tableFraction: number(0, 0.99),
  curveNumber: fc.option(number(30, 100)),
  irrigationRate: number(0.01, 1),
  dry: number(0, 1),
});

/** Places after the last day of each month of a season that begins on 20 February. */
function endsOf(days: number): Int32Array {
  const months = Array.from({ length: days }, (_, at) => dateOf(at).slice(0, 7));
  return Int32Array.from(months.flatMap((month, at) => (month === months[at + 1] ? [] : [at + 1])));
}

it('sums by month what the season with an object a day sums', () => {
  fc.assert(
    fc.property(fc.array(day, { minLength: 1, maxLength: 120 }), zone, (days, { irrigationRate, plantCoefficient, dry, ...rest }) => {
      const totalAvailableWater = rest.rootedFraction * totalAvailableWaterOfSoil(rest.availableWater, rest.rootDepth);
      const depletion = millimetres(dry * totalAvailableWater);
      const season = seasonBalance({
        days: days.map(({ eto, rain }, at) => ({ date: dateOf(at), eto, rain, plantCoefficient })),
        events: days.flatMap(({ minutes }, at) =>
          minutes > 0 ? [{ date: dateOf(at), irrigation: millimetres(minutes * irrigationRate), wettedFraction: 1 }] : [],
        ),
        zone: { ...rest, adjustsFraction: false, capillaryRise: millimetres(0) },
        depletion,
      });
      const ends = endsOf(days.length);
      const written = new Float64Array(SEASON_SUMS.length * ends.length);
      const column = (of: 'eto' | 'rain' | 'minutes') => Float64Array.from(days, (each) => each[of]);
      const final = seasonByMonth(
        { eto: column('eto'), rain: column('rain'), minutes: column('minutes') },
        ends,
        {
          plantCoefficient,
          totalAvailableWater,
          readilyAvailableWater: rest.tableFraction * totalAvailableWater,
          rootedFraction: rest.rootedFraction,
          retention: rest.curveNumber === null ? Number.POSITIVE_INFINITY : curveNumberRetention(rest.curveNumber),
          irrigationRate,
          depletion,
        },
        written,
      );
      expect(final).toBeCloseTo(season.days.at(-1)!.depletion, 9);
      season.months.forEach((month, at) => {
        const beyond = season.days.flatMap(({ date, readilyAvailableWater }, nth) =>
          date.startsWith(month.month) ? [(season.days[nth - 1]?.depletion ?? depletion) - readilyAvailableWater] : [],
        );
        // A day that begins at the limit itself, to the last digits, may be counted by either.
        const atTheLimit = beyond.filter((mm) => Math.abs(mm) < 1e-9).length;
        const stressDays = beyond.filter((mm) => mm >= 1e-9).length;
        const sums = { ...month, entered: month.rain - month.runoff - month.rainBesideRoots };
        SEASON_SUMS.forEach((name, place) => {
          const sum = written[SEASON_SUMS.length * at + place]!;
          if (name !== 'stressDays') return expect(sum).toBeCloseTo(sums[name], 9);
          expect(sum).toBeGreaterThanOrEqual(stressDays);
          expect(sum).toBeLessThanOrEqual(stressDays + atTheLimit);
        });
      });
    }),
    { numRuns: 300 },
  );
});

it('lets a value that is not a number show', () => {
  const written = new Float64Array(SEASON_SUMS.length);
  const one = (value: number) => Float64Array.of(value);
  const root = { plantCoefficient: 0.8, totalAvailableWater: 40, readilyAvailableWater: 20, rootedFraction: 1, retention: 60 };
  const final = seasonByMonth(
    { eto: one(Number.NaN), rain: one(0), minutes: one(0) },
    Int32Array.of(1),
    { ...root, irrigationRate: 1, depletion: 5 },
    written,
  );
  expect(final).toBeNaN();
  expect(Array.from(written)).toEqual(SEASON_SUMS.map(() => Number.NaN));
});
