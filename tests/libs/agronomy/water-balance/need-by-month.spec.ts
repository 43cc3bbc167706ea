import { irrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { needByMonth } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';

const WARM_UP = 12;

const day = fc.record({
  eto: fc.integer({ min: 0, max: 80 }).map((tenths) => tenths / 10),
  rain: fc.oneof(
    { weight: 3, arbitrary: fc.constant(0) },
    fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10),
  ),
});

/** Weather of eighty days, three months of it whose balances begin within one another, and a root zone. */
const world = fc.record({
  days: fc.array(day, { minLength: 80, maxLength: 80 }),
  first: fc.integer({ min: 0, max: 20 }),
  lengths: fc.tuple(fc.integer({ min: 1, max: 15 }), fc.integer({ min: 1, max: 15 }), fc.integer({ min: 1, max: 15 })),
  gap: fc.integer({ min: 0, max: 14 }),
  coefficient: fc.integer({ min: 0, max: 12 }).map((tenths) => tenths / 10),
  storage: fc.integer({ min: 0, max: 40 }),
});

const sumOf = (values: Iterable<number>) => Array.from(values).reduce((sum, value) => sum + value, 0);

it('every month has, to the last bit, what its own balance from twelve days before needs', () => {
  fc.assert(
    fc.property(world, ({ days, first, lengths, gap, coefficient, storage }) => {
      const eto = Float64Array.from(days, (each) => each.eto);
      const rain = Float64Array.from(days, (each) => each.rain);
      const [one, two, three] = lengths;
      const starts = Int32Array.of(first, first + one, first + one + two + gap);
      const ends = Int32Array.of(first + one, first + one + two, first + one + two + gap + three);
      const room = { depletion: new Float64Array(81), irrigation: new Float64Array(80) };
      const written = { ...room, sums: new Float64Array(3), ofMonths: new Float64Array(80).fill(-1) };
      needByMonth({ eto, rain }, { starts, ends, warmUpDays: WARM_UP }, coefficient, storage, written);
      const inMonths = new Array<number>(80).fill(-1);
      starts.forEach((start, month) => {
        const begin = Math.max(0, start - WARM_UP);
        const end = ends[month] as number;
        const weather = { eto: eto.subarray(begin, end), rain: rain.subarray(begin, end) };
        const zone = { plantCoefficient: coefficient, readilyAvailableWater: millimetres(storage) };
        const alone = irrigationNeed(weather, zone, start - begin).irrigationMm;
        expect(written.sums[month]).toBe(sumOf(alone));
        alone.forEach((needed, index) => {
          inMonths[start + index] = needed;
        });
      });
      expect([...written.ofMonths]).toEqual(inMonths);
      const sums = new Float64Array(3);
      needByMonth({ eto, rain }, { starts, ends, warmUpDays: WARM_UP }, coefficient, storage, { ...room, sums, ofMonths: null });
      expect([...sums]).toEqual([...written.sums]);
    }),
  );
});

it('rain of a fifth of the evapotranspiration does not count, more counts in whole', () => {
  const need = (rain: number) => {
    const written = { depletion: new Float64Array(2), irrigation: new Float64Array(1), sums: new Float64Array(1), ofMonths: null };
    const months = { starts: Int32Array.of(0), ends: Int32Array.of(1), warmUpDays: 90 };
    needByMonth({ eto: Float64Array.of(5), rain: Float64Array.of(rain) }, months, 0.8, 20, written);
    return written.sums[0];
  };
  expect([0, 1, 1.5, 4, 30].map(need)).toEqual([4, 4, 2.5, 0, 0]);
});
