import {
  coverCurveNumber,
  type GroundCover,
  type SoilGroup,
  weightedCurveNumber,
} from '@rillbook/agronomy/water-balance/rain/curve-numbers.js';
import { curveNumberRunoff } from '@rillbook/agronomy/water-balance/rain/curve-number-runoff.js';
import { dependableRain } from '@rillbook/agronomy/water-balance/rain/dependable-rain.js';
import { dependableRainRatio } from '@rillbook/agronomy/water-balance/rain/dependable-rain-ratio.js';
import { countedRain } from '@rillbook/agronomy/water-balance/rain/effective-rain.js';
import { fixedFractionRain, ORDINANCE_RAIN_SHARE } from '@rillbook/agronomy/water-balance/rain/fixed-fraction-rain.js';
import { metricScsEffectiveRain } from '@rillbook/agronomy/water-balance/rain/metric-scs-effective-rain.js';
import {
  storageFactor,
  unlimitedUsdaScsEffectiveRain,
  usdaScsEffectiveRain,
} from '@rillbook/agronomy/water-balance/rain/usda-scs-effective-rain.js';
import { inchesFromMillimetres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, given, givenRow } from '../golden-check.js';
import { checks } from './values.js';

const inches = millimetresFromInches;
const groups: readonly SoilGroup[] = ['A', 'B', 'C', 'D'];

/** TR-55, Table 2-2a: lots of a quarter acre are 38 % impervious (from memory), the rest lawn. */
const QUARTER_ACRE_IMPERVIOUS = 0.38;

const byGroup = (cover: GroundCover) => groups.map((group) => coverCurveNumber(cover, group)).join(' | ');
const residential = (group: SoilGroup) =>
  weightedCurveNumber([
    { area: QUARTER_ACRE_IMPERVIOUS, curveNumber: coverCurveNumber('impervious', group) },
    { area: 1 - QUARTER_ACRE_IMPERVIOUS, curveNumber: coverCurveNumber('open space, good', group) },
  ]);

describe('Monthly effective rain', () => {
  it('er-001: USDA-SCS before its limits (NEH 623, Eq. 2-84)', () => {
    const check = checks['er-001'];
    const rain = unlimitedUsdaScsEffectiveRain(inches(given(check, 'P')), inches(given(check, 'ETc')), given(check, 'SF'));
    expectGolden(check, { Pe: inchesFromMillimetres(rain) });
  });

  it('er-003: USDA-SCS within rain and need (NEH 623, Eq. 2-84)', () => {
    const check = checks['er-003'];
    const rain = usdaScsEffectiveRain(inches(given(check, 'P')), inches(given(check, 'ETc')), given(check, 'SF'));
    expectGolden(check, { Pe: inchesFromMillimetres(rain) });
  });

  it('er-004: storage factor (NEH 623, Eq. 2-85)', () => {
    const check = checks['er-004'];
    expectGolden(check, { SF: givenRow(check, 'D').map((depth) => storageFactor(inches(depth))) });
  });

  it.each(['er-006', 'er-007'] as const)('%s: metric USDA-SCS form', (id) => {
    const check = checks[id];
    expectGolden(check, { Pe: metricScsEffectiveRain(millimetres(given(check, 'P'))) });
  });

  it('never more than the need, nor more than none without need (NEH 623, Eq. 2-84)', () => {
    expectWithin(inchesFromMillimetres(usdaScsEffectiveRain(inches(8), inches(1), 1)), 1, 1e-12);
    expect(usdaScsEffectiveRain(inches(1), millimetres(0), 1)).toBe(0);
  });

  it('the two forms of the metric method meet at 250 mm (arithmetic)', () => {
    expectWithin(metricScsEffectiveRain(millimetres(250)), 150, 1e-9);
  });

  it('FAO dependable rain: 0.6 P - 10 up to 70 mm, 0.8 P - 24 above, never below 0 (arithmetic)', () => {
    expect([10, 50, 70, 100].map((rain) => Number(dependableRain(millimetres(rain)).toFixed(9)))).toEqual([0, 20, 32, 56]);
  });

  it('er-017: a fixed quarter of the peak month', () => {
    const check = checks['er-017'];
    const rain = fixedFractionRain(inches(given(check, 'peak_month_rain')), ORDINANCE_RAIN_SHARE);
    expectGolden(check, { Ra: inchesFromMillimetres(rain) });
  });

  it.each([
    [3, 0.45],
    [8, 0.62],
    [10, 0.65],
    [22, 0.77],
    [30, 0.81],
    [60, 0.87],
    [90, 0.9],
  ])('rain in four years of five with a mean of %d in (NEH 623, Table 2-46)', (mean, ratio) => {
    expect(dependableRainRatio(inches(mean))).toBe(ratio);
  });

  it('between the rows of Table 2-46 straight, outside refused', () => {
    expectWithin(dependableRainRatio(inches(11)), 0.67, 1e-9);
    const code = expect.objectContaining({ code: 'MEAN_RAIN_OUT_OF_DOMAIN' });
    expect(() => dependableRainRatio(inches(2.9))).toThrowError(code);
    expect(() => dependableRainRatio(inches(91))).toThrowError(code);
  });
});

describe('Rain of a day', () => {
  it('er-016: rain below 0.2 ETo is ignored (FAO-56, chapter 8)', () => {
    const check = checks['er-016'];
    const counted = givenRow(check, 'rain').map((rain) => countedRain(millimetres(rain), millimetres(given(check, 'ETo'))));
    expectGolden(check, { counted: `${counted.join(' | ')} mm` });
  });
});

describe('Runoff by curve number (TR-55)', () => {
  it.each(['er-010', 'er-011', 'er-013', 'er-014'] as const)('%s: Table 2-1', (id) => {
    const check = checks[id];
    expectGolden(check, { Q: inchesFromMillimetres(curveNumberRunoff(inches(given(check, 'P')), given(check, 'CN'))) });
  });

  it.each([
    [3, 80, 1.25],
    [2, 85, 0.8],
  ])('%d in on curve number %d (Table 2-1, from memory, recomputed)', (rain, curveNumber, runoff) => {
    expectWithin(inchesFromMillimetres(curveNumberRunoff(inches(rain), curveNumber)), runoff, 0.006);
  });

  it('er-021: curve numbers of lawn, pavement and quarter-acre lots, the last weighted by area', () => {
    expectGolden(checks['er-021'], {
      open_space_good: byGroup('open space, good'),
      impervious: byGroup('impervious'),
      residential_quarter_acre: groups.map((group) => Math.round(residential(group))).join(' | '),
    });
  });

  it('Example 2-1: 30 % of 61 and 70 % of 74 make 70, and 6 in of rain give 2.81 in (values from memory)', () => {
    const curveNumber = Math.round(
      weightedCurveNumber([
        { area: 0.3, curveNumber: 61 },
        { area: 0.7, curveNumber: 74 },
      ]),
    );
    expect(curveNumber).toBe(70);
    expectWithin(inchesFromMillimetres(curveNumberRunoff(inches(6), curveNumber)), 2.81, 0.006);
  });

  it('rain below a fifth of the retention does not run off (Eq. 2-2)', () => {
    expect(curveNumberRunoff(inches(0.5), 75)).toBe(0);
  });
});
