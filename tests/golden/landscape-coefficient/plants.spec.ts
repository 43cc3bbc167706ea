import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { landscapeCoefficient, landscapeEvapotranspiration } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import type { Plants, WaterNeed } from '@rillbook/agronomy/plants/plant-words.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { inchesFromMillimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

describe('Landscape coefficient method (Costello, Matheny, Clark and Jones 2000)', () => {
  it('KL of 0.2, 0.5 and 1.0 is 0.1', () => {
    expectWithin(landscapeCoefficient(0.2, 0.5, 1), 0.1, 1e-12);
  });

  it("ETL is KL x ETo: 0.62 of 6 in is 3.72 in (arithmetic on the guide's case 1)", () => {
    expectWithin(inchesFromMillimetres(landscapeEvapotranspiration(0.62, millimetresFromInches(6))), 3.72, 1e-9);
  });

  it("density is 1 where nobody states it, shade lies within the guide's 0.5 to 0.9", () => {
    expect(densityFactor(null)).toBe(1);
    expect(shadeFactor('full')).toBe(1);
    expect(shadeFactor('shade')).toBeGreaterThanOrEqual(0.5);
    expect(shadeFactor('shade')).toBeLessThanOrEqual(0.9);
  });
});

describe('Plant factors', () => {
  it.each<[Plants, number]>([
    ['turf cool-season', 0.8],
    ['turf warm-season', 0.6],
    ['annuals', 0.8],
    ['shrubs', 0.5],
    ['perennials', 0.5],
  ])('ANSI/ASABE S623.1 (turf and annuals from memory): %s %d', (plants, factor) => {
    expect(plantFactor(null, null, plants).plantFactor).toBe(factor);
  });

  it.each<[WaterNeed, number, number]>([
    ['very low', 0, 0.1],
    ['low', 0.1, 0.3],
    ['moderate', 0.4, 0.6],
    ['high', 0.7, 0.9],
  ])('WUCOLS IV: %s lies within %d to %d', (waterNeed, low, high) => {
    const { plantFactor: factor } = plantFactor(null, waterNeed, 'shrubs');
    expect(factor).toBeGreaterThanOrEqual(low);
    expect(factor).toBeLessThanOrEqual(high);
  });
});

describe('Roots and depletion', () => {
  it.each<[Plants, number, number]>([
    ['trees', 24, 36],
    ['shrubs', 18, 24],
    ['groundcover', 8, 12],
    ['annuals', 8, 12],
    ['turf cool-season', 6, 10],
  ])('Arizona landscape watering guideline (Tucson): %s %d to %d in', (plants, low, high) => {
    const inches = inchesFromMillimetres(rootDepth(null, plants).rootDepth);
    expect(inches).toBeGreaterThanOrEqual(low);
    expect(inches).toBeLessThanOrEqual(high);
  });

  it('FAO-56 Table 22: p 0.40 for cool-season and 0.50 for warm-season turf', () => {
    expect(managementAllowedDepletion('turf cool-season')).toBe(0.4);
    expect(managementAllowedDepletion('turf warm-season')).toBe(0.5);
  });
});
