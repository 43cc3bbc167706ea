import { establishment } from '@rillbook/agronomy/plants/establishment/establishment.js';
import { establishmentOfCover } from '@rillbook/agronomy/plants/establishment/establishment-of-cover.js';
import { youngDensityFactor, youngPlantFactor, youngRootDepth } from '@rillbook/agronomy/plants/establishment/young-plants.js';
import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { plantsWords, waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { densityRange } from '@rillbook/agronomy/plants/published/factor-range.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { inchesFromMillimetres, millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });
const someShare = fc.double({ min: 0, max: 1, noNaN: true });
const somePlants = fc.constantFrom(...plantsWords, null);

describe('establishment (common practice, no source)', () => {
  it.each([
    ['turf cool-season', '2026-04-12', 42],
    ['turf warm-season', '2026-04-12', 42],
    ['annuals', '2026-03-29', 28],
    ['vegetables', '2026-03-29', 28],
    ['groundcover', '2026-08-28', 180],
    ['perennials', '2026-08-28', 180],
    ['shrubs', '2027-03-01', 365],
    ['mixed', '2027-03-01', 365],
    ['trees', '2028-02-29', 730],
  ] as const)('%s planted on 1 March 2026 count as established from %s, after %d days', (plants, until, days) => {
    expect(establishment(plants, '2026-03-01', until)).toEqual({ share: 1, days });
    const dayBefore = new Date(Date.parse(until) - 86_400_000).toISOString().slice(0, 10);
    expect(establishment(plants, '2026-03-01', dayBefore)!.share).toBeCloseTo((days - 1) / days, 12);
  });

  it('begins at nothing on the day of planting and stays whole ever after', () => {
    expect(establishment('trees', '2026-03-01', '2026-03-01')!.share).toBe(0);
    expect(establishment('trees', '2026-03-01', '2049-01-01')!.share).toBe(1);
    expect(establishment(null, '2026-03-01', '2026-03-01')!.days).toBe(365);
  });

  it('is not known without a date, nor before the plants are there', () => {
    expect(establishment('trees', null, '2026-03-01')).toBeNull();
    expect(establishment('trees', '2026-03-02', '2026-03-01')).toBeNull();
    expect(() => establishment('trees', '2026-02-30', '2026-03-01')).toThrowError(code('DATE_OUT_OF_DOMAIN'));
  });

  it('grows evenly, day by day, over leap days too', () => {
    const shares = ['2028-02-28', '2028-02-29', '2028-03-01'].map((date) => establishment('shrubs', '2028-02-01', date)!.share * 365);
    expect(shares).toEqual([27, 28, 29].map((days) => expect.closeTo(days, 9)));
  });

  it('of several plants is their mean by cover', () => {
    const old = { coverPercent: 75, share: 1 };
    expect(establishmentOfCover([old, { coverPercent: 25, share: 0 }])).toBe(0.75);
    // Without a cover of its own the new plant counts like the old one.
    expect(establishmentOfCover([old, { coverPercent: null, share: 0 }])).toBe(0.5);
    expect(establishmentOfCover([{ coverPercent: null, share: 0.25 }])).toBe(0.25);
    expect(establishmentOfCover([{ coverPercent: 0, share: 0.25 }])).toBe(1);
    expect(establishmentOfCover([])).toBe(1);
    expect(() => establishmentOfCover([{ coverPercent: 101, share: 1 }])).toThrowError(code('COVER_OUT_OF_DOMAIN'));
    expect(() => establishmentOfCover([{ coverPercent: 10, share: 1.1 }])).toThrowError(code('COVER_OUT_OF_DOMAIN'));
  });
});

describe('young plants (common practice, no source)', () => {
  it.each([
    ['turf cool-season', 2, 8],
    ['annuals', 4, 10],
    ['shrubs', 10, 21],
    ['trees', 14, 30],
  ] as const)('roots of %s begin %d in deep and end at %d in', (plants, young, grown) => {
    const { rootDepth: depth } = rootDepth(null, plants);
    const inches = [0, 0.5, 1].map((share) => inchesFromMillimetres(youngRootDepth(plants, depth, share)));
    expect(inches).toEqual([young, (young + grown) / 2, grown].map((each) => expect.closeTo(each, 9)));
  });

  it('no root ball is deeper than the roots it becomes', () => {
    expect(youngRootDepth('trees', millimetres(200), 0)).toBe(200);
  });

  it('need as plants of high need, turf as a moist bed, never less than grown ones', () => {
    expect(youngPlantFactor('shrubs', 0.2, 0)).toBe(0.8);
    expect(youngPlantFactor('shrubs', 0.2, 0.5)).toBeCloseTo(0.5, 12);
    expect(youngPlantFactor('turf warm-season', 0.6, 0)).toBe(1);
    expect(youngPlantFactor('shrubs', 0.9, 0)).toBe(0.9);
  });

  it("stand within the guide's class of sparse planting, but for turf", () => {
    const { low, high } = densityRange('low');
    expect(youngDensityFactor('shrubs', 1, 0)).toBeGreaterThanOrEqual(low);
    expect(youngDensityFactor('shrubs', 1, 0)).toBeLessThanOrEqual(high);
    expect(youngDensityFactor('shrubs', 0.6, 0)).toBe(0.6);
    expect(youngDensityFactor('turf cool-season', 1, 0)).toBe(1);
  });

  it('end as grown ones and move only one way, whatever was planted', () => {
    fc.assert(
      fc.property(somePlants, fc.constantFrom(...waterNeeds), someShare, someShare, (plants, need, one, other) => {
        const [earlier, later] = [Math.min(one, other), Math.max(one, other)];
        const factor = plantFactor(null, need, plants).plantFactor;
        const { rootDepth: depth } = rootDepth(null, plants);
        expect(youngPlantFactor(plants, factor, 1)).toBeCloseTo(factor, 12);
        expect(youngRootDepth(plants, depth, 1)).toBeCloseTo(depth, 9);
        expect(youngDensityFactor(plants, densityFactor(null), 1)).toBe(1);
        expect(youngPlantFactor(plants, factor, later)).toBeLessThanOrEqual(youngPlantFactor(plants, factor, earlier) + 1e-12);
        expect(youngRootDepth(plants, depth, later)).toBeGreaterThanOrEqual(youngRootDepth(plants, depth, earlier) - 1e-9);
        expect(youngDensityFactor(plants, 1, later)).toBeGreaterThanOrEqual(youngDensityFactor(plants, 1, earlier) - 1e-12);
      }),
    );
  });

  it('refuse a share that is none, by code', () => {
    for (const share of [-0.1, 1.1, Number.NaN])
      expect(() => youngPlantFactor('shrubs', 0.5, share)).toThrowError(code('ESTABLISHMENT_OUT_OF_DOMAIN'));
  });
});
