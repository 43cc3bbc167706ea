import { registerVolume, resolutionSd, volumeAcrossSwap } from '@rillbook/metering/intervals/register-volume.js';
import { gallonsFromLitres, litresFrom } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checks } from '../../../golden/volume-equivalents/values.js';

const ccf = { unit: 'CCF', multiplier: 1, digits: 5 } as const;

describe('volume between two registers', () => {
  // Unit definitions as printed in extension circulars; tests/golden/volume-equivalents.
  it.each(['CCF', 'm3'] as const)('one %s has the published gallons', (unit) => {
    const { litres } = registerVolume({ from: 10, to: 11 }, { unit, multiplier: 1, digits: null });
    const { expected, tolerance } = checks['ml-001'];
    expect(Math.abs(gallonsFromLitres(litres) / expected[unit][0] - 1)).toBeLessThanOrEqual(tolerance.rel);
  });

  it('is difference times multiplier times unit', () => {
    expect(registerVolume({ from: 100, to: 112.5 }, { unit: 'm3', multiplier: 10, digits: 6 })).toEqual({
      litres: 125_000,
      rolledOver: false,
    });
  });

  it('rolls over at the number of digits', () => {
    const rolled = registerVolume({ from: 99_990, to: 15 }, ccf);
    expect(rolled.rolledOver).toBe(true);
    expect(rolled.litres).toBeCloseTo(litresFrom(25, 'CCF'), 6);
  });

  it('refuses to run backwards where the digits are not known, and a register that does not fit', () => {
    expect(() => registerVolume({ from: 20, to: 15 }, { ...ccf, digits: null })).toThrow(
      expect.objectContaining({ code: 'REGISTER_RUNS_BACKWARDS' }),
    );
    expect(() => registerVolume({ from: 20, to: 100_000 }, ccf)).toThrow(expect.objectContaining({ code: 'REGISTER_OUT_OF_DOMAIN' }));
    expect(() => registerVolume({ from: 20, to: 30 }, { ...ccf, multiplier: 0 })).toThrow(
      expect.objectContaining({ code: 'REGISTER_OUT_OF_DOMAIN' }),
    );
  });

  it('adds both meters across a swap, each in its own unit', () => {
    const swapped = volumeAcrossSwap({ from: 99_998, to: 3 }, ccf, { from: 0, to: 40 }, { unit: 'm3', multiplier: 1, digits: 6 });
    expect(swapped.litres).toBeCloseTo(litresFrom(5, 'CCF') + 40_000, 6);
    expect(swapped.rolledOver).toBe(true);
  });

  it('is the same in one step or two, over the top or not', () => {
    fc.assert(
      fc.property(fc.nat(99_999), fc.nat(49_999), fc.nat(49_999), (from, first, second) => {
        const at = (register: number) => register % 100_000;
        const whole = registerVolume({ from, to: at(from + first + second) }, ccf).litres;
        const parts = [
          { from, to: at(from + first) },
          { from: at(from + first), to: at(from + first + second) },
        ];
        expect(parts.reduce((sum, pair) => sum + registerVolume(pair, ccf).litres, 0)).toBeCloseTo(whole, 3);
      }),
    );
  });

  // JCGM 100:2008, 4.3.7: two roundings to whole units, each of variance 1/12.
  it('knows its resolution', () => {
    expect(resolutionSd(1, { unit: 'L', multiplier: 1, digits: null })).toBeCloseTo(Math.sqrt(2 / 12), 12);
  });
});
