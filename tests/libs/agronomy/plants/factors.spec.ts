import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { landscapeCoefficient, landscapeEvapotranspiration, totalWaterApplied } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { plantsWords, sunWords, waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { assessedRange, ordinanceRange, waterNeedOfCode } from '@rillbook/agronomy/plants/published/category-range.js';
import { cropRow } from '@rillbook/agronomy/plants/published/crop-row.js';
import { densityRange, type FactorClass, microclimateRange } from '@rillbook/agronomy/plants/published/factor-range.js';
import { hydrozonePlantFactor, transpiringArea } from '@rillbook/agronomy/plants/published/hydrozone-rules.js';
import { groupPlantFactor, landscapeGroupOf } from '@rillbook/agronomy/plants/published/landscape-group.js';
import { monthlyTurfCoefficient } from '@rillbook/agronomy/plants/published/monthly-turf-coefficient.js';
import { singlePlantDensity } from '@rillbook/agronomy/plants/published/single-plant-factor.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { squareMetres } from '@rillbook/units/area.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });
const classes: readonly FactorClass[] = ['low', 'average', 'high'];
const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

// Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California; from memory.
describe('factors of the landscape coefficient method', () => {
  it.each([
    ['low', 0.5, 0.9, 0.9],
    ['average', 1, 1, 1],
    ['high', 1.1, 1.3, 1.4],
  ] as const)('of %s density and microclimate have the published ranges', (factorClass, low, densest, hottest) => {
    expect(densityRange(factorClass)).toEqual({ low, high: densest });
    expect(microclimateRange(factorClass)).toEqual({ low, high: hottest });
  });

  it('are separate, and multiply', () => {
    fc.assert(
      fc.property(within(0, 1), within(0.5, 1.3), within(0.5, 1.4), (ks, kd, kmc) => {
        const coefficient = landscapeCoefficient(ks, kd, kmc);
        expect(coefficient).toBeCloseTo(ks * kd * kmc, 12);
        expect(landscapeCoefficient(ks, 2 * kd, kmc)).toBeCloseTo(2 * coefficient, 12);
        expect(landscapeCoefficient(ks, kd, 2 * kmc)).toBeCloseTo(2 * coefficient, 12);
      }),
    );
  });

  it('keep the coefficient within what the published ranges allow', () => {
    const lowest = landscapeCoefficient(assessedRange('very low').low, densityRange('low').low, microclimateRange('low').low);
    const highest = landscapeCoefficient(assessedRange('high').high, densityRange('high').high, microclimateRange('high').high);
    expect([lowest, highest]).toEqual([0, expect.closeTo(0.9 * 1.3 * 1.4, 12)]);
    for (const need of waterNeeds)
      for (const sun of sunWords)
        for (const factorClass of classes) {
          const stated = densityFactor(densityRange(factorClass).high);
          const coefficient = landscapeCoefficient(plantFactor(null, need, 'shrubs').plantFactor, stated, shadeFactor(sun));
          expect(coefficient).toBeGreaterThanOrEqual(lowest);
          expect(coefficient).toBeLessThanOrEqual(highest);
        }
  });

  it('shade is never more than full sun and lies in the low class of the microclimate', () => {
    const { low, high } = microclimateRange('low');
    for (const sun of ['part', 'shade'] as const) {
      expect(shadeFactor(sun)).toBeGreaterThanOrEqual(low);
      expect(shadeFactor(sun)).toBeLessThanOrEqual(high);
    }
    expect(shadeFactor('full')).toBe(microclimateRange('average').low);
  });

  it('density is bounded: what nobody can mean is refused by code', () => {
    expect(densityFactor(densityRange('high').high)).toBe(1.3);
    for (const wrong of [-1, 0, 1.6, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => densityFactor(wrong)).toThrowError(code('DENSITY_FACTOR_OUT_OF_DOMAIN'));
  });

  it('water applied is never less than water needed, and needs an efficiency', () => {
    fc.assert(
      fc.property(within(0, 300), within(0.01, 1), (depth, efficiency) => {
        expect(totalWaterApplied(millimetres(depth), efficiency)).toBeGreaterThanOrEqual(depth);
      }),
    );
    for (const wrong of [0, -0.5, 1.01]) {
      expect(() => totalWaterApplied(millimetres(1), wrong)).toThrowError(code('IRRIGATION_EFFICIENCY_OUT_OF_DOMAIN'));
    }
  });

  it('the need of the plants is linear in evapotranspiration', () => {
    fc.assert(
      fc.property(within(0, 1.7), within(0, 300), (coefficient, eto) => {
        const once = landscapeEvapotranspiration(coefficient, millimetres(eto));
        expect(landscapeEvapotranspiration(coefficient, millimetres(2 * eto))).toBeCloseTo(2 * once, 9);
      }),
    );
  });
});

describe('plant factors as published', () => {
  it('the factor of each category lies in its range, of the list and of the ordinance', () => {
    for (const need of waterNeeds) {
      const { plantFactor: factor } = plantFactor(null, need, 'perennials');
      for (const { low, high } of [assessedRange(need), ordinanceRange(need)]) {
        expect(factor).toBeGreaterThanOrEqual(low);
        expect(factor).toBeLessThanOrEqual(high);
      }
    }
    // 23 CCR 491, from memory.
    expect(ordinanceRange('high')).toEqual({ low: 0.7, high: 1 });
    expect(ordinanceRange('moderate')).toEqual({ low: 0.4, high: 0.6 });
    expect(ordinanceRange('low')).toEqual({ low: 0.1, high: 0.3 });
  });

  it('the factor of each kind of plant is that of its group in a dry climate', () => {
    const grouped = plantsWords.filter((plants) => landscapeGroupOf(plants, 'dry') !== null);
    expect(grouped).toHaveLength(plantsWords.length - 1);
    for (const plants of grouped)
      expect(plantFactor(null, null, plants).plantFactor).toBe(groupPlantFactor(landscapeGroupOf(plants, 'dry')!));
    expect(groupPlantFactor(landscapeGroupOf('shrubs', 'humid')!)).toBe(0.7);
    expect(landscapeGroupOf('vegetables', 'dry')).toBeNull();
    expect(() => groupPlantFactor('moss' as 'desert-adapted')).toThrowError(code('LANDSCAPE_GROUP_UNKNOWN'));
  });

  it('turf as a crop uses more than turf that only has to look acceptable', () => {
    for (const turf of ['turf cool-season', 'turf warm-season'] as const)
      expect(cropRow(turf).single.mid).toBeGreaterThan(plantFactor(null, null, turf).plantFactor);
    expect(() => cropRow('maize' as 'turf warm-season')).toThrowError(code('CROP_UNKNOWN'));
    expect(() => monthlyTurfCoefficient('turf warm-season', 13)).toThrowError(code('MONTH_OUT_OF_DOMAIN'));
    expect(() => singlePlantDensity('hedge' as 'shrub')).toThrowError(code('SINGLE_PLANT_UNKNOWN'));
  });

  it('codes of the list are categories, or none', () => {
    expect(['VL', 'LO', 'M', 'H', 'U', 'NA'].map(waterNeedOfCode)).toEqual(['very low', 'low', 'moderate', 'high', null, null]);
    expect(() => waterNeedOfCode('L')).toThrowError(code('WATER_NEED_CODE_UNKNOWN'));
  });
});

// SLIDE rules behind ANSI/ASABE S623.1, read in an abstract.
describe('hydrozones', () => {
  it('of several plants follow the thirstiest', () => {
    expect(hydrozonePlantFactor([0.2, 0.5, 0.8])).toBe(0.8);
    expect(() => hydrozonePlantFactor([])).toThrowError(code('HYDROZONE_EMPTY'));
    expect(() => hydrozonePlantFactor([0.2, Number.NaN])).toThrowError(code('PLANT_FACTOR_OUT_OF_DOMAIN'));
  });

  it('below 80 % of cover are watered by their leaves, not by the bed', () => {
    const area = (bed: number, canopy: number) => transpiringArea(squareMetres(bed), squareMetres(canopy));
    expect([area(100, 100), area(100, 80), area(100, 79)]).toEqual([100, 100, 79]);
    expect(() => area(100, 101)).toThrowError(code('CANOPY_OUT_OF_DOMAIN'));
  });
});
