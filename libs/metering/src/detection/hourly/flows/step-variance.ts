import type { ObservedMeter } from '../steps/observed-meter.js';

/** Spread of a step's litres about the runs' expected, as share: pressure, and what heads do. Common practice, no source. */
const RELATIVE = 0.04;

/** Doubt of a start or an end within a step that a run fills in part only, as share of the step. Common practice, no source. */
const EDGE_OF_STEP = 0.04;

/** A difference of two roundings to a step of the register: its variance in squared steps. */
const ROUNDING_VARIANCE = 1 / 6;

/**
 * Variance of a step's litres about what is expected, by how the meter's runs scatter.
 *
 * var = scatter² · ((0.04 · expected)² + (step / 25 · flow)² where a run fills the step in part) + resolution² / 6 + indoor sd²
 *
 * @param meter - The meter as it is known. [code]
 * @param step - The step. [–]
 * @param expected - Litres of the runs in it. [L]
 * @param runMinutes - Minutes that zones ran in it, all together. [min]
 * @returns Variance, above zero. [L2]
 */
export function stepVariance(meter: ObservedMeter, step: number, expected: number, runMinutes: number): number {
  return meter.scatter ** 2 * runVariance(meter, expected, runMinutes) + otherVariance(meter, step);
}

/**
 * The part of the runs, as it is assumed while nothing is learnt.
 *
 * @param meter - The meter. [code]
 * @param expected - Litres of the runs in a step. [L]
 * @param runMinutes - Minutes that zones ran in it, all together. [min]
 * @returns Variance. [L2]
 */
export function runVariance(meter: ObservedMeter, expected: number, runMinutes: number): number {
  const { stepMinutes } = meter.usage;
  const edge = runMinutes > 0 && runMinutes % stepMinutes !== 0 ? EDGE_OF_STEP * stepMinutes * (expected / runMinutes) : 0;
  return (RELATIVE * expected) ** 2 + edge ** 2;
}

/**
 * Variance of the litres of a step beside runs, into which they reach when clocks are off.
 *
 * @param meter - The meter. [code]
 * @param step - The step. [–]
 * @param flow - Flow of the runs at its edge. [L/min]
 * @returns Variance. [L2]
 */
export function edgeVariance(meter: ObservedMeter, step: number, flow: number): number {
  return (meter.scatter * EDGE_OF_STEP * meter.usage.stepMinutes * flow) ** 2 + otherVariance(meter, step);
}

/**
 * The part of the register and of people.
 *
 * @param meter - The meter. [code]
 * @param step - The step. [–]
 * @returns Variance. [L2]
 */
export function otherVariance(meter: ObservedMeter, step: number): number {
  const resolution = meter.usage.resolutionLitres ?? meter.evidence.resolutionLitres ?? 1;
  return ROUNDING_VARIANCE * resolution ** 2 + (meter.indoorSd[step] as number) ** 2;
}
