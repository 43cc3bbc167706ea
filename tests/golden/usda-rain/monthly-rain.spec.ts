import { curveNumberRunoff } from '@rillbook/agronomy/water-balance/rain/curve-number-runoff.js';
import { dependableRain } from '@rillbook/agronomy/water-balance/rain/dependable-rain.js';
import { metricScsEffectiveRain } from '@rillbook/agronomy/water-balance/rain/metric-scs-effective-rain.js';
import {
  storageFactor,
  unlimitedUsdaScsEffectiveRain,
  usdaScsEffectiveRain,
} from '@rillbook/agronomy/water-balance/rain/usda-scs-effective-rain.js';
import { inchesFromMillimetres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

describe('USDA-SCS monthly effective rain (NEH 623, chapter 2, Eq. 2-84 and 2-85)', () => {
  it('1 in of rain and no need: 0.594 in before the limits (Table 2-43 prints 0.59, from memory)', () => {
    expectWithin(inchesFromMillimetres(unlimitedUsdaScsEffectiveRain(millimetresFromInches(1), millimetres(0), 1)), 0.594, 0.0005);
    expect(usdaScsEffectiveRain(millimetresFromInches(1), millimetres(0), 1)).toBe(0);
  });

  it('4 in of rain and 4 in of need: 2.635 in (arithmetic)', () => {
    expectWithin(inchesFromMillimetres(usdaScsEffectiveRain(millimetresFromInches(4), millimetresFromInches(4), 1)), 2.635, 0.0005);
  });

  it('never more than the need: 8 in of rain and 1 in of need give 1 in', () => {
    expectWithin(inchesFromMillimetres(usdaScsEffectiveRain(millimetresFromInches(8), millimetresFromInches(1), 1)), 1, 1e-12);
  });

  it.each([
    [0.75, 0.722],
    [1, 0.773],
    [1.5, 0.858],
    [2, 0.922],
    [2.5, 0.968],
    [3, 1.001],
    [4, 1.033],
    [5, 1.041],
  ])('storage factor at %d in (coefficients published, values arithmetic)', (depth, factor) => {
    expectWithin(storageFactor(millimetresFromInches(depth)), factor, 0.0006);
  });
});

describe('Monthly rain in metric forms', () => {
  it('metric USDA-SCS form: 100 mm give 84.0, 450 mm give 170 (formula of the open package FAO56 on CRAN; arithmetic)', () => {
    expectWithin(metricScsEffectiveRain(millimetres(100)), 84, 1e-9);
    expectWithin(metricScsEffectiveRain(millimetres(450)), 170, 1e-9);
    expectWithin(metricScsEffectiveRain(millimetres(250)), 150, 1e-9);
  });

  it('FAO dependable rain: 0.6 P - 10 up to 70 mm, 0.8 P - 24 above, never below 0 (arithmetic)', () => {
    expectWithin(dependableRain(millimetres(50)), 20, 1e-9);
    expectWithin(dependableRain(millimetres(70)), 32, 1e-9);
    expectWithin(dependableRain(millimetres(100)), 56, 1e-9);
    expectWithin(dependableRain(millimetres(10)), 0, 0);
  });
});

describe('Curve number runoff (TR-55, Table 2-1 and Example 2-1)', () => {
  it.each([
    [6, 75, 3.28],
    [5, 75, 2.45],
    [5, 90, 3.88],
    [4, 70, 1.33],
    [3, 80, 1.25],
    [2, 85, 0.8],
    [6, 70, 2.81],
  ])('%d in on curve number %d', (rain, curveNumber, runoff) => {
    expectWithin(inchesFromMillimetres(curveNumberRunoff(millimetresFromInches(rain), curveNumber)), runoff, 0.006);
  });

  it('rain below a fifth of the retention does not run off', () => {
    expect(curveNumberRunoff(millimetresFromInches(0.5), 75)).toBe(0);
  });
});
