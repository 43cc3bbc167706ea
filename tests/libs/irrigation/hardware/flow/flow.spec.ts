import { flowAtPressure, type Opening, pressureExponent } from '@rillbook/irrigation/hardware/flow/flow-at-pressure.js';
import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { orificeFlow, SHARP_HOLE, SMOOTH_NOZZLE } from '@rillbook/irrigation/hardware/flow/orifice-flow.js';
import { litresPerMinute } from '@rillbook/units/flow.js';
import { millimetres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const pressures = fc.double({ min: 20, max: 900, noNaN: true });
const openings = Object.keys(pressureExponent) as Opening[];

describe('flow and pressure', () => {
  it('flow rises with pressure, save that of a pressure-compensated emitter', () => {
    fc.assert(
      fc.property(fc.constantFrom(...openings), pressures, fc.double({ min: 1.01, max: 4, noNaN: true }), (opening, pressure, times) => {
        const at = (other: number) => flowAtPressure(litresPerMinute(10), kilopascals(pressure), kilopascals(other), opening);
        expect(at(pressure)).toBe(10);
        if (opening === 'pressure-compensated emitter') expect(at(times * pressure)).toBe(10);
        else expect(at(times * pressure)).toBeGreaterThan(10);
      }),
    );
  });

  it('nothing flows without pressure, whatever the water leaves by', () => {
    for (const opening of openings) expect(flowAtPressure(litresPerMinute(10), kilopascals(200), kilopascals(0), opening), opening).toBe(0);
  });

  it('the square-root rule is the orifice equation at two pressures', () => {
    fc.assert(
      fc.property(pressures, pressures, fc.double({ min: 0.5, max: 40, noNaN: true }), (first, second, diameter) => {
        const at = (pressure: number) => orificeFlow(millimetres(diameter), kilopascals(pressure), SMOOTH_NOZZLE);
        const ruled = flowAtPressure(at(first), kilopascals(first), kilopascals(second));
        expect(Math.abs(ruled / at(second) - 1)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  it('an opening of twice the diameter gives four times the flow, a smooth one more than a sharp one', () => {
    const of = (diameter: number, coefficient: number) => orificeFlow(millimetres(diameter), kilopascals(300), coefficient);
    expect(of(6, SHARP_HOLE)).toBeCloseTo(4 * of(3, SHARP_HOLE), 12);
    expect(of(3, SMOOTH_NOZZLE)).toBeGreaterThan(of(3, SHARP_HOLE));
    expect(of(0, SHARP_HOLE)).toBe(0);
  });

  it.each<[string, () => unknown, string]>([
    ['a flow at no pressure', () => flowAtPressure(litresPerMinute(1), kilopascals(0), kilopascals(1)), 'FLOW_AT_PRESSURE_OUT_OF_DOMAIN'],
    ['a flow below zero', () => flowAtPressure(litresPerMinute(-1), kilopascals(1), kilopascals(1)), 'FLOW_AT_PRESSURE_OUT_OF_DOMAIN'],
    ['a diameter below zero', () => orificeFlow(millimetres(-1), kilopascals(1), SHARP_HOLE), 'ORIFICE_OUT_OF_DOMAIN'],
    ['a coefficient above 1', () => orificeFlow(millimetres(1), kilopascals(1), 1.1), 'ORIFICE_OUT_OF_DOMAIN'],
    ['suction', () => orificeFlow(millimetres(1), kilopascals(-5), SHARP_HOLE), 'ORIFICE_OUT_OF_DOMAIN'],
    ['heads of a flow below zero', () => flowOfHeads([{ count: 1, flow: litresPerMinute(-1) }]), 'HEADS_OUT_OF_DOMAIN'],
  ])('refuses %s by code', (_, deed, code) => {
    expect(deed).toThrow(expect.objectContaining({ code }));
  });

  it('a zone of no heads has no flow', () => {
    expect(flowOfHeads([])).toBe(0);
  });
});
