import { coverCurveNumber, weightedCurveNumber } from '@rillbook/agronomy/water-balance/rain/curve-numbers.js';
import { curveNumberRetention } from '@rillbook/agronomy/water-balance/rain/curve-number-runoff.js';
import { fixedFractionRain } from '@rillbook/agronomy/water-balance/rain/fixed-fraction-rain.js';
import { evaporationCoefficient } from '@rillbook/agronomy/water-balance/surface/evaporation-coefficient.js';
import { evaporationReduction } from '@rillbook/agronomy/water-balance/surface/evaporation-reduction.js';
import { exposedWettedFraction } from '@rillbook/agronomy/water-balance/surface/exposed-wetted-fraction.js';
import { surfaceBalance } from '@rillbook/agronomy/water-balance/surface/surface-balance.js';
import { totalEvaporableWater } from '@rillbook/agronomy/water-balance/surface/total-evaporable-water.js';
import { wettedFraction } from '@rillbook/agronomy/water-balance/surface/wetted-fraction.js';
import { millimetres } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });
const mm = millimetres;

describe('the surface layer (FAO-56, chapter 7)', () => {
  it('evaporates freely down to REW, then less, at TEW nothing (Eq. 74)', () => {
    expect([0, 9, 14.5, 20, 25].map((gone) => evaporationReduction(mm(gone), mm(20), mm(9)))).toEqual([1, 1, 0.5, 0, 0]);
  });

  it('evaporates from what is both bare and wet, at least a hundredth (Eq. 75)', () => {
    expect(exposedWettedFraction(0.2, 1)).toBe(0.8);
    expect(exposedWettedFraction(0.2, 0.35)).toBe(0.35);
    expect(exposedWettedFraction(0.999, 1)).toBe(0.01);
  });

  it('is limited by the energy on its wet part (Eq. 71)', () => {
    const limits = { basalCoefficient: 0.2, maximumCoefficient: 1.2, exposedWettedFraction: 0.3 };
    expect(evaporationCoefficient(1, limits)).toBeCloseTo(0.36, 12);
    expect(evaporationCoefficient(0.2, limits)).toBeCloseTo(0.2, 12);
  });

  it('is wetted as the last water came: by irrigation its share, by 3 mm of rain all', () => {
    const wetting = (rain: number, irrigation: number) => ({ rain: mm(rain), irrigation: mm(irrigation), irrigatedFraction: 0.35 });
    expect(wettedFraction(0.5, wetting(20, 5))).toBe(0.35);
    expect(wettedFraction(0.5, wetting(3, 0))).toBe(1);
    expect(wettedFraction(0.5, wetting(2.9, 0))).toBe(0.5);
  });

  it('refuses what cannot be, by code', () => {
    expect(() => totalEvaporableWater(0.1, 0.2, mm(100))).toThrowError(code('SOIL_WATER_OUT_OF_DOMAIN'));
    expect(() => evaporationReduction(mm(1), mm(5), mm(6))).toThrowError(code('SURFACE_LAYER_OUT_OF_DOMAIN'));
    expect(() => exposedWettedFraction(1.1, 1)).toThrowError(code('GROUND_FRACTION_OUT_OF_DOMAIN'));
    const wet = { infiltratedRain: mm(0), irrigation: mm(5), evaporation: mm(1), wettedFraction: 0.3, exposedWettedFraction: 0.3 };
    expect(surfaceBalance(mm(10), wet, mm(20)).surfacePercolation).toBeCloseTo(5 / 0.3 - 10, 12);
    for (const none of [{ wettedFraction: 0 }, { exposedWettedFraction: 0 }, { wettedFraction: 1.1 }, { exposedWettedFraction: 1.1 }])
      expect(() => surfaceBalance(mm(10), { ...wet, ...none }, mm(20))).toThrowError(code('GROUND_FRACTION_OUT_OF_DOMAIN'));
    const limits = { basalCoefficient: 1.3, maximumCoefficient: 1.2, exposedWettedFraction: 1 };
    expect(() => evaporationCoefficient(1, limits)).toThrowError(code('CROP_COEFFICIENT_OUT_OF_DOMAIN'));
  });
});

describe('rain and runoff', () => {
  it('refuse what cannot be, by code', () => {
    expect(() => curveNumberRetention(0)).toThrowError(code('CURVE_NUMBER_OUT_OF_DOMAIN'));
    expect(() => fixedFractionRain(mm(10), 1.5)).toThrowError(code('RAIN_SHARE_OUT_OF_DOMAIN'));
    expect(() => weightedCurveNumber([])).toThrowError(code('AREAS_OUT_OF_DOMAIN'));
    expect(() => weightedCurveNumber([{ area: -1, curveNumber: 50 }])).toThrowError(code('AREAS_OUT_OF_DOMAIN'));
  });

  it('a weighted curve number lies between its parts', () => {
    const parts = [
      { area: 300, curveNumber: coverCurveNumber('open space, good', 'D') },
      { area: 100, curveNumber: coverCurveNumber('impervious', 'D') },
    ];
    expect(weightedCurveNumber(parts)).toBeCloseTo(84.5, 12);
  });
});
