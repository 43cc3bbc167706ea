import { lowHalfFromLowQuarter } from '@rillbook/irrigation/hardware/uniformity/distribution-uniformity.js';
import { runTimeMultiplier } from '@rillbook/irrigation/hardware/uniformity/run-time-multiplier.js';
import { describe, expect, it } from 'vitest';
import { hydrozone } from '../../../../golden/watersense-budget/values.js';

describe('run-time multiplier', () => {
  // EPA WaterSense water budget approach (from memory); tests/golden/watersense-budget.
  it('is the budget example to its last digit', () => {
    expect(runTimeMultiplier(hydrozone.uniformity)).toBeCloseTo(hydrozone.multiplier, 4);
  });

  it.each([0, -0.1, 1.01, Number.NaN])('refuses a uniformity of %d by code', (uniformity) => {
    expect(() => runTimeMultiplier(uniformity)).toThrow(expect.objectContaining({ code: 'UNIFORMITY_OUT_OF_DOMAIN' }));
  });

  // The regression 0.386 + 0.614 DU (from memory), which the trade's table rounds to 0.40 + 0.60 DU.
  it('is one over the low half, to the rounding of the regression', () => {
    for (const uniformity of [0.5, 0.65, 0.8, 1]) {
      expect(Math.abs(1 / runTimeMultiplier(uniformity) - lowHalfFromLowQuarter(uniformity))).toBeLessThanOrEqual(0.0071);
    }
    expect(lowHalfFromLowQuarter(1)).toBe(1);
    expect(() => lowHalfFromLowQuarter(1.1)).toThrow(expect.objectContaining({ code: 'UNIFORMITY_OUT_OF_DOMAIN' }));
  });
});
