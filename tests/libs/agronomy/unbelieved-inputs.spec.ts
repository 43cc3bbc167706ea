import { hargreavesSamani } from '@rillbook/agronomy/evapotranspiration/methods/hargreaves-samani.js';
import { sineOfMeanSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-mean-sun-angle.js';
import { vapourPressureFromPsychrometer } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-psychrometer.js';
import { vapourPressureFromSpecificHumidity } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-specific-humidity.js';
import { landscapeCoefficient } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { coverCurveNumber, weightedCurveNumber } from '@rillbook/agronomy/water-balance/rain/curve-numbers.js';
import { dependableRain } from '@rillbook/agronomy/water-balance/rain/dependable-rain.js';
import { fixedFractionRain } from '@rillbook/agronomy/water-balance/rain/fixed-fraction-rain.js';
import { metricScsEffectiveRain } from '@rillbook/agronomy/water-balance/rain/metric-scs-effective-rain.js';
import { unlimitedUsdaScsEffectiveRain, usdaScsEffectiveRain } from '@rillbook/agronomy/water-balance/rain/usda-scs-effective-rain.js';
import { adjustedDepletionFraction } from '@rillbook/agronomy/water-balance/root-zone/depletion-fraction.js';
import { totalAvailableWater, totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { irrigationBy } from '@rillbook/agronomy/water-balance/season/irrigation-event.js';
import { wettedFractionByMethod } from '@rillbook/agronomy/water-balance/surface/wetted-fraction-by-method.js';
import { expect, it } from 'vitest';
import { of } from '../at-the-edge.js';
import { refusalOf } from '../refusal-of.js';

const NONE = Number.NaN;
const ENDLESS = Number.POSITIVE_INFINITY;

const cold = { maximumTemperature: 30, minimumTemperature: 15 } as never;
const hargreaves = (radiation: number) => hargreavesSamani(22 as never, cold, radiation as never);
const ofWetBulb = (wetBulb: number, pressure = 100, ventilation = 'ventilated') =>
  vapourPressureFromPsychrometer(30 as never, wetBulb as never, pressure as never, ventilation as never);
const ofCurveNumber = (curveNumber: number) =>
  weightedCurveNumber([
    { area: 1, curveNumber: 61 },
    { area: 1, curveNumber },
  ]);

const refused: readonly (readonly [string, () => unknown, string, object])[] = [
  ['rain below nothing (metric)', () => of(metricScsEffectiveRain)(-10), 'RAIN_OUT_OF_DOMAIN', { monthlyRain: -10 }],
  ['rain below nothing (dependable)', () => of(dependableRain)(-10), 'RAIN_OUT_OF_DOMAIN', { monthlyRain: -10 }],
  ['rain below nothing (share)', () => of(fixedFractionRain)(-10, 0.25), 'RAIN_OUT_OF_DOMAIN', { monthlyRain: -10 }],
  ['rain below nothing (limited)', () => of(usdaScsEffectiveRain)(-50, 5, 1), 'RAIN_OUT_OF_DOMAIN', { monthlyRain: -50 }],
  ['use below nothing', () => of(usdaScsEffectiveRain)(50, -5, 1), 'EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc: -5 }],
  ['use that no number is', () => of(unlimitedUsdaScsEffectiveRain)(50, NONE, 1), 'EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc: NONE }],
  ['storage below nothing', () => of(usdaScsEffectiveRain)(50, 5, -1), 'STORAGE_FACTOR_OUT_OF_DOMAIN', { storageFactor: -1 }],
  ['roots above the ground', () => of(totalAvailableWater)(0.3, 0.1, -100), 'ROOT_DEPTH_OUT_OF_DOMAIN', { rootDepth: -100 }],
  ['roots above the ground of a soil', () => of(totalAvailableWaterOfSoil)(150, -100), 'ROOT_DEPTH_OUT_OF_DOMAIN', { rootDepth: -100 }],
  ['a soil of less than no water', () => of(totalAvailableWaterOfSoil)(-1, 300), 'AVAILABLE_WATER_OUT_OF_DOMAIN', { availableWater: -1 }],
  ['a day of unknown use', () => of(adjustedDepletionFraction)(0.5, NONE), 'EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc: NONE }],
  ['a day of endless use', () => of(adjustedDepletionFraction)(0.5, ENDLESS), 'EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc: ENDLESS }],
  ['a day of dew', () => of(adjustedDepletionFraction)(0.5, -1), 'EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc: -1 }],
  ['a sun that takes', () => hargreaves(-5), 'RADIATION_OUT_OF_DOMAIN', { extraterrestrialRadiation: -5 }],
  ['day nought', () => of(sineOfMeanSunAngle)(39, 0), 'DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear: 0 }],
  ['day 367', () => of(sineOfMeanSunAngle)(39, 367), 'DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear: 367 }],
  ['no day', () => of(sineOfMeanSunAngle)(39, NONE), 'DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear: NONE }],
  [
    'a wet bulb that no air can cool',
    () => ofWetBulb(-10),
    'TEMPERATURES_CONTRADICT',
    { dryBulbTemperature: 30, wetBulbTemperature: -10, pressure: 100 },
  ],
  ['air of less than no pressure', () => ofWetBulb(20, -1), 'PRESSURE_OUT_OF_DOMAIN', { pressure: -1 }],
  ['a ventilation nobody knows', () => ofWetBulb(20, 100, 'stormy'), 'VENTILATION_UNKNOWN', { ventilation: 'stormy' }],
  [
    'vapour in air of less than no pressure',
    () => of(vapourPressureFromSpecificHumidity)(0.01, -1),
    'PRESSURE_OUT_OF_DOMAIN',
    { pressure: -1 },
  ],
  ['a curve number that none is', () => ofCurveNumber(NONE), 'CURVE_NUMBER_OUT_OF_DOMAIN', { curveNumber: NONE }],
  ['a curve number of nought', () => ofCurveNumber(0), 'CURVE_NUMBER_OUT_OF_DOMAIN', { curveNumber: 0 }],
  ['a curve number above 100', () => ofCurveNumber(100.1), 'CURVE_NUMBER_OUT_OF_DOMAIN', { curveNumber: 100.1 }],
  ['a sun nobody knows', () => shadeFactor('moon' as never), 'SUN_UNKNOWN', { sun: 'moon' }],
  ['plants nobody knows', () => managementAllowedDepletion('moss' as never), 'PLANTS_UNKNOWN', { plants: 'moss' }],
  ['a method nobody knows', () => wettedFractionByMethod('fog' as never), 'WETTING_METHOD_UNKNOWN', { method: 'fog' }],
  [
    'irrigation by a method nobody knows',
    () => irrigationBy('2026-06-01', 5 as never, 'fog' as never),
    'WETTING_METHOD_UNKNOWN',
    { method: 'fog' },
  ],
  ['a cover nobody knows', () => coverCurveNumber('lava' as never, 'A'), 'GROUND_COVER_UNKNOWN', { cover: 'lava', soilGroup: 'A' }],
  [
    'a soil group nobody knows',
    () => coverCurveNumber('impervious', 'E' as never),
    'GROUND_COVER_UNKNOWN',
    { cover: 'impervious', soilGroup: 'E' },
  ],
];

it.each(refused)('%s is refused', (_, deed, code, details) => {
  expect(refusalOf(deed)).toEqual([code, details]);
});

it.each([
  [NONE, 1, 1],
  [0.5, -0.1, 1],
  [0.5, 1, ENDLESS],
])('a landscape of factors %d, %d and %d is refused', (plantFactor, densityFactor, shade) => {
  expect(refusalOf(() => landscapeCoefficient(plantFactor, densityFactor, shade))).toEqual([
    'LANDSCAPE_COEFFICIENT_OUT_OF_DOMAIN',
    { plantFactor, densityFactor, shadeFactor: shade },
  ]);
});

it('nothing at all is still something to count with', () => {
  expect([0, 0, 0]).toEqual([of(metricScsEffectiveRain)(0), of(dependableRain)(0), of(fixedFractionRain)(0, 0.25)]);
  expect([of(usdaScsEffectiveRain)(0, 5, 1), of(usdaScsEffectiveRain)(50, 0, 1), of(usdaScsEffectiveRain)(50, 5, 0)]).toEqual([0, 0, 0]);
  expect([of(totalAvailableWater)(0.3, 0.1, 0), of(totalAvailableWaterOfSoil)(150, 0), of(totalAvailableWaterOfSoil)(0, 300)]).toEqual([
    0, 0, 0,
  ]);
  expect(of(adjustedDepletionFraction)(0.5, 0)).toBeCloseTo(0.7, 12);
  expect([hargreaves(0), landscapeCoefficient(0, 1, 1), ofCurveNumber(100)]).toEqual([0, 0, 80.5]);
  expect([1, 366].map((day) => of(sineOfMeanSunAngle)(39, day))).toEqual([expect.any(Number), expect.any(Number)]);
});

// FAO-56, Eq. 15: without air pressure only the saturation of the wet bulb is left, 2.338 kPa at 20 °C; 10 °C of depression take 0.662 kPa at 100 kPa.
it('a psychrometer reads its pressure of vapour down to dry air', () => {
  expect(ofWetBulb(20, 0)).toBeCloseTo(2.338, 3);
  expect(ofWetBulb(20)).toBeCloseTo(2.338 - 0.662, 3);
  expect(of(vapourPressureFromSpecificHumidity)(0.01, 0)).toBe(0);
});
