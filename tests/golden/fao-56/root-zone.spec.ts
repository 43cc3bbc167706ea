import { countedRain } from '@rillbook/agronomy/water-balance/rain/effective-rain.js';
import { adjustedDepletionFraction } from '@rillbook/agronomy/water-balance/root-zone/depletion-fraction.js';
import { readilyAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/readily-available-water.js';
import { rootZoneBalance } from '@rillbook/agronomy/water-balance/root-zone/root-zone-balance.js';
import { totalAvailableWater, totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { waterStressCoefficient } from '@rillbook/agronomy/water-balance/root-zone/water-stress-coefficient.js';
import { millimetres } from '@rillbook/units/length.js';
import { finiteQuantity } from '@rillbook/units/quantity.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Every number: Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 8, example named in the title,
// save the two of an open library's season (pyfao56, cotton 2013), which say so.

const zero = millimetres(0);

describe('FAO-56 chapter 8: the root zone', () => {
  it.each([
    ['loamy sand', 0.15, 0.06, 72, 29],
    ['silt', 0.32, 0.15, 136, 54],
    ['silty clay', 0.35, 0.23, 96, 38],
  ])('Example 36: tomato roots of 0.8 m in %s', (_, fieldCapacity, wiltingPoint, taw, raw) => {
    const total = totalAvailableWater(fieldCapacity, wiltingPoint, millimetres(800));
    expectWithin(total, taw, 0.01);
    expectWithin(readilyAvailableWater(0.4, total), raw, 0.5);
  });

  it('Example 37: ten days without rain', () => {
    const taw = totalAvailableWater(0.32, 0.12, millimetres(800));
    const raw = readilyAvailableWater(0.4, taw);
    expectWithin(taw, 160, 0.01);
    expectWithin(raw, 64, 0.01);
    const stress = [1.0, 1.0, 0.97, 0.91, 0.85, 0.8, 0.75, 0.7, 0.66, 0.62];
    const ends = [61.0, 67.0, 72.8, 78.3, 83.4, 88.2, 92.6, 96.9, 100.8, 104.5];
    let depletion = millimetres(55);
    ends.forEach((end, day) => {
      const ks = waterStressCoefficient(depletion, taw, raw);
      expectWithin(ks, stress[day] ?? Number.NaN, 0.006);
      const fluxes = { rain: zero, runoff: zero, irrigation: zero, capillaryRise: zero, etc: millimetres(ks * 1.2 * 5) };
      depletion = rootZoneBalance(depletion, fluxes, taw).depletion;
      expectWithin(depletion, end, 0.06);
    });
  });

  it('Example 38, set-up: 130 mm/m, 78 mm/m, RAW of the first day 23 mm', () => {
    expectWithin(totalAvailableWater(0.23, 0.1, millimetres(1000)), 130, 1e-9);
    const perMetre = finiteQuantity<'mm/m'>(130, 'AVAILABLE_WATER_OUT_OF_DOMAIN');
    expectWithin(readilyAvailableWater(0.6, totalAvailableWaterOfSoil(perMetre, millimetres(1000))), 78, 1e-9);
    expectWithin(readilyAvailableWater(0.6, totalAvailableWaterOfSoil(perMetre, millimetres(300))), 23, 0.5);
  });

  it('rain below 0.2 ETo is ignored: with ETo 5, 0.9 mm counts 0 and 1.5 mm counts 1.5', () => {
    expect(countedRain(millimetres(0.9), millimetres(5))).toBe(0);
    expect(countedRain(millimetres(1.5), millimetres(5))).toBe(1.5);
  });
});

describe('pyfao56 cotton season 2013 (open library, USDA-ARS)', () => {
  it('2013-120: adjusted p 0.793, RAW 59.457 of TAW 75', () => {
    const p = adjustedDepletionFraction(0.65, millimetres(1.431));
    expectWithin(p, 0.793, 0.0005);
    expectWithin(readilyAvailableWater(p, millimetres(75)), 59.457, 0.01);
  });

  it('2013-115: 33 mm of irrigation from a depletion of 75 leaves 42 and drains nothing', () => {
    const fluxes = { rain: zero, runoff: zero, irrigation: millimetres(33), capillaryRise: zero, etc: zero };
    expect(rootZoneBalance(millimetres(75), fluxes, millimetres(75))).toEqual({ depletion: 42, deepPercolation: 0 });
  });

  it('2013-120: 108 mm of irrigation with depletion 56.779 and ETa 1.431 drains 49.790', () => {
    const fluxes = { rain: zero, runoff: zero, irrigation: millimetres(108), capillaryRise: zero, etc: millimetres(1.431) };
    const end = rootZoneBalance(millimetres(56.779), fluxes, millimetres(75));
    expectWithin(end.deepPercolation, 49.79, 0.0005);
    expectWithin(end.depletion, 0, 1e-9);
  });
});
