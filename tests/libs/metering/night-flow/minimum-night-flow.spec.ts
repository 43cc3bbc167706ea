import { backgroundLossOfMains, legitimateNightUse, nightWindow } from '@rillbook/metering/night-flow/minimum-night-flow.js';
import { metres } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';

// Water-loss literature on minimum night flow; tests/golden/meters.
describe('minimum night flow', () => {
  it('of people and mains is proportional to both', () => {
    expect(legitimateNightUse(100)).toBeCloseTo(60, 9);
    expect(legitimateNightUse(0)).toBe(0);
    expect(backgroundLossOfMains(metres(250))).toBeCloseTo(10, 9);
  });

  it('is looked for in a window of two hours within one day', () => {
    expect(nightWindow.untilMinute - nightWindow.fromMinute).toBe(120);
  });

  it('refuses people and mains below zero by code', () => {
    expect(() => legitimateNightUse(-1)).toThrow(expect.objectContaining({ code: 'NIGHT_FLOW_OUT_OF_DOMAIN' }));
    expect(() => backgroundLossOfMains(metres(-1))).toThrow(expect.objectContaining({ code: 'NIGHT_FLOW_OUT_OF_DOMAIN' }));
  });
});
