import { LEAST_CANS, waterCaught } from '@rillbook/irrigation/hardware/catch-test/water-caught.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { expect, it } from 'vitest';

const litres = (ml: readonly number[]) => ml.map((each) => (each / 1000) as Quantity<'L'>);
const minutes = 10 as Quantity<'min'>;
const mouthArea = 0.0107 as Quantity<'m2'>;
// A published test of fifteen cans: tests/golden/uniformity.
const PUBLISHED = [47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12];

it('tells the published low-quarter uniformity, the mean and the rate', () => {
  const told = waterCaught({ catches: litres(PUBLISHED), minutes, mouthArea });
  expect(told.uniformity).toBeCloseTo(0.4962, 3);
  expect(told.meanVolume).toBeCloseTo(461 / 15 / 1000, 12);
  // 1 L on 1 m2 is 1 mm deep, by the definition of the litre.
  expect(told.rate).toBeCloseTo((6 * (461 / 15)) / 1000 / 0.0107, 9);
});

it('tells no rate where time or mouth is not known', () => {
  expect(waterCaught({ catches: litres(PUBLISHED), minutes: null, mouthArea }).rate).toBeNull();
  expect(waterCaught({ catches: litres(PUBLISHED), minutes, mouthArea: null }).rate).toBeNull();
});

it('refuses fewer cans than have a lowest quarter, and cans that are all empty', () => {
  const few = { catches: litres(PUBLISHED.slice(0, LEAST_CANS - 1)), minutes, mouthArea };
  expect(() => waterCaught(few)).toThrow(expect.objectContaining({ code: 'CATCHES_OUT_OF_DOMAIN', details: { count: 3 } }));
  expect(() => waterCaught({ ...few, catches: litres([0, 0, 0, 0]) })).toThrow(expect.objectContaining({ code: 'CATCHES_OUT_OF_DOMAIN' }));
  expect(() => waterCaught({ catches: litres(PUBLISHED), minutes: 0 as Quantity<'min'>, mouthArea })).toThrow(
    expect.objectContaining({ code: 'CATCH_TEST_OUT_OF_DOMAIN' }),
  );
});
