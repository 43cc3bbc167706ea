import { fillMissingDays, type PartlyKnownDay } from '@rillbook/metering/volumes/fill-missing-days.js';
import { describe, expect, it } from 'vitest';

const day = (litres: number, knownShare = 1, neededLitres: number | null = null, etWeight = 1): PartlyKnownDay => ({
  litres,
  knownShare,
  etWeight,
  neededLitres,
});
const days = (count: number, of: (index: number) => PartlyKnownDay) => Array.from({ length: count }, (_, index) => of(index));

describe('filling missing days', () => {
  it('fills up to a fifth of the weight and no more', () => {
    expect(fillMissingDays(days(10, (index) => (index < 2 ? day(0, 0) : day(8))))).toEqual({
      litres: 80,
      filledLitres: 16,
      missingShare: 0.2,
    });
    expect(fillMissingDays(days(10, (index) => (index < 3 ? day(0, 0) : day(8))))).toEqual({ litres: null, missingShare: 0.3 });
  });

  it('weighs days by evapotranspiration', () => {
    const hot = days(10, (index) => (index === 0 ? day(0, 0, null, 9) : day(8)));
    expect(fillMissingDays(hot)).toEqual({ litres: null, missingShare: 0.5 });
  });

  it('fills in proportion to need, else to days', () => {
    const needing = days(10, (index) => (index === 0 ? day(0, 0, 30) : day(10, 1, 10)));
    expect(fillMissingDays(needing)).toMatchObject({ litres: 120, filledLitres: 30 });
    const wet = days(10, (index) => (index === 0 ? day(0, 0, 0) : day(9, 1, 0)));
    expect(fillMissingDays(wet)).toMatchObject({ litres: 90, filledLitres: 9 });
  });

  it('fills the missing part of a day', () => {
    expect(fillMissingDays(days(10, (index) => (index === 0 ? day(5, 0.5) : day(10))))).toMatchObject({ litres: 100, filledLitres: 5 });
  });

  it('leaves a whole month alone', () => {
    expect(fillMissingDays(days(30, () => day(2)))).toEqual({ litres: 60, filledLitres: 0, missingShare: 0 });
  });
});
