import { adjustedDepletionFraction } from '@rillbook/agronomy/water-balance/root-zone/depletion-fraction.js';
import { rootZoneBalance } from '@rillbook/agronomy/water-balance/root-zone/root-zone-balance.js';
import { totalAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { waterStressCoefficient } from '@rillbook/agronomy/water-balance/root-zone/water-stress-coefficient.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const depth = (max: number) => fc.double({ min: 0, max, noNaN: true }).map(millimetres);

describe('rootZoneBalance', () => {
  it('conserves water, with what runs off, rises, drains and is asked of an empty zone (FAO-56, Eq. 85 and 88)', () => {
    fc.assert(
      fc.property(depth(100), depth(80), depth(40), depth(60), depth(5), (start, rain, irrigation, etc, capillaryRise) => {
        const fluxes = { rain, runoff: millimetres(0.1 * rain), irrigation, capillaryRise, etc };
        const end = rootZoneBalance(start, fluxes, millimetres(100));
        const expected = start - rain + fluxes.runoff - irrigation - capillaryRise + etc + end.deepPercolation - end.shortfall;
        expect(Math.abs(end.depletion - expected)).toBeLessThanOrEqual(1e-9);
        expect(end.depletion === 0 || end.deepPercolation === 0).toBe(true);
        expect(end.depletion === 100 || end.shortfall === 0).toBe(true);
      }),
    );
  });

  it('stays within 0 and TAW (FAO-56, Eq. 86)', () => {
    const dry = {
      rain: millimetres(0),
      runoff: millimetres(0),
      irrigation: millimetres(0),
      capillaryRise: millimetres(0),
      etc: millimetres(9),
    };
    expect(rootZoneBalance(millimetres(98), dry, millimetres(100))).toEqual({ depletion: 100, deepPercolation: 0, shortfall: 7 });
    const rising = { ...dry, etc: millimetres(0), capillaryRise: millimetres(5) };
    expect(rootZoneBalance(millimetres(2), rising, millimetres(100))).toEqual({ depletion: 0, deepPercolation: 3, shortfall: 0 });
  });
});

describe('stress and its fraction', () => {
  it('Ks falls from 1 at RAW to 0 at TAW (FAO-56, Eq. 84)', () => {
    const ks = (depletion: number) => waterStressCoefficient(millimetres(depletion), millimetres(100), millimetres(40));
    expect([ks(0), ks(40), ks(70), ks(100), ks(120)]).toEqual([1, 1, 0.5, 0, 0]);
  });

  it('p stays within 0.1 and 0.8 (FAO-56, Table 22)', () => {
    expect(adjustedDepletionFraction(0.5, millimetres(5))).toBe(0.5);
    expect(adjustedDepletionFraction(0.7, millimetres(0))).toBe(0.8);
    expect(adjustedDepletionFraction(0.2, millimetres(12))).toBe(0.1);
  });

  it('refuses a soil that cannot be, by code', () => {
    const code = (found: string) => expect.objectContaining({ code: found });
    expect(() => totalAvailableWater(0.1, 0.2, millimetres(300))).toThrowError(code('SOIL_WATER_OUT_OF_DOMAIN'));
    expect(() => waterStressCoefficient(millimetres(1), millimetres(10), millimetres(20))).toThrowError(code('ROOT_ZONE_OUT_OF_DOMAIN'));
    expect(() => adjustedDepletionFraction(1.2, millimetres(5))).toThrowError(code('DEPLETION_FRACTION_OUT_OF_DOMAIN'));
  });
});
