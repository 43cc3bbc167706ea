import { type IrrigationMethod, irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { designPressure } from '@rillbook/irrigation/hardware/pressure/design-pressure.js';
import { judgePressure, MISTING_RATIO } from '@rillbook/irrigation/hardware/pressure/operating-pressure.js';
import { kilopascals, kilopascalsFromPsi, psiFromKilopascals } from '@rillbook/units/pressure.js';
import { describe, expect, it } from 'vitest';

const judge = (method: IrrigationMethod, psi: number) => judgePressure(method, kilopascalsFromPsi(psi));

describe('design pressure', () => {
  // Desert water agencies: spray 30 psi, rotor 45 to 50 psi.
  it.each<[IrrigationMethod, number, number]>([
    ['spray', 30, 30],
    ['rotor', 45, 50],
  ])('of %s is %d to %d psi', (method, from, to) => {
    const design = designPressure(method);
    expect(psiFromKilopascals(design?.from ?? kilopascals(0))).toBeCloseTo(from, 9);
    expect(psiFromKilopascals(design?.to ?? kilopascals(0))).toBeCloseTo(to, 9);
    expect(design?.source).toMatch(/water agencies/);
  });

  it('says where it comes from for every method, and has none for the hand', () => {
    for (const method of irrigationMethods.filter((each) => each !== 'hand')) {
      expect(designPressure(method)?.source).toMatch(/water agencies|common practice, no source/);
    }
    expect(designPressure('hand')).toBeNull();
    expect(() => designPressure('flood' as IrrigationMethod)).toThrow(expect.objectContaining({ code: 'METHOD_UNKNOWN' }));
  });
});

describe('operating pressure', () => {
  it('at 60 psi a spray head flows 41 % more than designed and is likely misting', () => {
    const { ratio, flowRatio, likelyMisting } = judge('spray', 60) ?? { ratio: 0, flowRatio: 0, likelyMisting: null };
    expect(ratio).toBeCloseTo(2, 12);
    expect(flowRatio).toBeCloseTo(1.414, 3);
    expect(likelyMisting).toBe(true);
  });

  // Common practice, no source: the ratio is this product's.
  it('mists only above the stated ratio', () => {
    expect(judge('spray', 30 * MISTING_RATIO - 0.01)?.likelyMisting).toBe(false);
    expect(judge('spray', 30 * MISTING_RATIO + 0.01)?.likelyMisting).toBe(true);
    expect(judge('rotor', 60)?.likelyMisting).toBe(false);
    expect(judge('rotor', 76)?.likelyMisting).toBe(true);
  });

  it('within the design range has the ratio 1, below it less', () => {
    expect(judge('rotor', 47)?.ratio).toBe(1);
    expect(judge('rotor', 22.5)?.ratio).toBeCloseTo(0.5, 12);
  });

  it('says nothing of mist or flow where no water is thrown', () => {
    expect(judge('drip', 60)).toEqual({ ratio: expect.closeTo(2, 9), flowRatio: null, likelyMisting: null });
    expect(judge('hand', 60)).toBeNull();
  });

  it('refuses suction by code', () => {
    expect(() => judge('spray', -1)).toThrow(expect.objectContaining({ code: 'PRESSURE_OUT_OF_DOMAIN' }));
  });
});
