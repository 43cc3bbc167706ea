import { defaultPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/default-precipitation-rate.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { runTimeMultiplier } from '@rillbook/irrigation/hardware/uniformity/run-time-multiplier.js';
import { describe, expect, it } from 'vitest';
import { multiplierTable, multiplierTolerance } from '../../../golden/run-time-multiplier/values.js';
import { defaultUniformities, hydrozone } from '../../../golden/watersense-budget/values.js';

describe('run-time multiplier', () => {
  // Irrigation Association scheduling multiplier (from memory); tests/golden/run-time-multiplier.
  it.each(multiplierTable)('at DU %d is %d', (uniformity, multiplier) => {
    expect(Math.abs(runTimeMultiplier(uniformity) - multiplier)).toBeLessThanOrEqual(multiplierTolerance);
  });

  // EPA WaterSense water budget approach (from memory); tests/golden/watersense-budget.
  it('is the budget example to its last digit', () => {
    expect(runTimeMultiplier(hydrozone.uniformity)).toBeCloseTo(hydrozone.multiplier, 4);
  });

  it.each([0, -0.1, 1.01, Number.NaN])('refuses a uniformity of %d by code', (uniformity) => {
    expect(() => runTimeMultiplier(uniformity)).toThrow(expect.objectContaining({ code: 'UNIFORMITY_OUT_OF_DOMAIN' }));
  });
});

describe('defaults by method', () => {
  // EPA WaterSense water budget approach, default DU_LQ (from memory); tests/golden/watersense-budget.
  it.each(defaultUniformities)('%s has a uniformity of %d', (method, uniformity) => {
    expect(defaultUniformity(method).value).toBe(uniformity);
    expect(defaultUniformity(method).source).toMatch(/WaterSense/);
  });

  it('say where they come from for every method', () => {
    for (const method of irrigationMethods) {
      expect(defaultUniformity(method).source).toMatch(/WaterSense|common practice/);
      const rate = defaultPrecipitationRate(method);
      if (rate) expect(rate.source).toMatch(/state guide|common practice/);
    }
    expect(defaultPrecipitationRate('bubbler')).toBeNull();
  });

  // Utah state landscape guide: 0.5 in takes 20 minutes with pop-up sprays, so 1.5 in/h.
  it('a spray zone puts out half an inch in 20 minutes', () => {
    expect(((defaultPrecipitationRate('spray')?.value ?? 0) * 20) / 60).toBeCloseTo(0.5 * 25.4, 9);
  });
});
