import type { ObservedMeter } from '../steps/observed-meter.js';
import { type RunMinutes, runMinutes } from '../steps/run-minutes.js';
import { stepVariance } from './step-variance.js';
import { valueAt } from '../steps/value-at.js';

/** A residual beyond this many standard deviations counts as that many: someone drew water beside the run. */
const WINSORIZED = 4;

/**
 * What one day says of the zones' flows against those believed: G = Mᵀ W M, c = Mᵀ W r, and h, what a clock that is a minute later would
 * add to c; minutes M, weights W = 1 / variance, residuals r.
 */
export interface DayEquations {
  readonly day: number;
  readonly gram: Float64Array;
  readonly residual: Float64Array;
  readonly perMinuteOfShift: Float64Array;
}

/**
 * The equations of a day.
 *
 * @param meter - The meter as it is known. [code]
 * @param day - The day, from 0. [–]
 * @param design - Minutes of the day, where they are at hand. [min]
 * @returns G, c and h. [any]
 */
export function dayEquations(meter: ObservedMeter, day: number, design: RunMinutes = runMinutes(meter, day)): DayEquations {
  const zones = meter.flows.length;
  const equations: DayEquations = {
    day,
    gram: new Float64Array(zones * zones),
    residual: new Float64Array(zones),
    perMinuteOfShift: new Float64Array(zones),
  };
  const litresOf = litresByStep(meter, day, design);
  for (let step = 0; step < design.steps; step++) addStep(meter, design, litresOf, step, equations);
  return equations;
}

// Litres of the runs in each step, by the flows believed on that day.
function litresByStep(meter: ObservedMeter, day: number, { steps, minutes }: RunMinutes): Float64Array {
  const zones = meter.flows.length;
  return Float64Array.from({ length: steps }, (_, step) => {
    let litres = 0;
    for (let zone = 0; zone < zones; zone++) {
      const inStep = minutes[step * zones + zone] ?? 0;
      if (inStep > 0) litres += inStep * (meter.flows[zone] ?? Number.NaN) * (meter.factorOfDay[day * zones + zone] ?? 1);
    }
    return litres;
  });
}

function addStep(meter: ObservedMeter, design: RunMinutes, litresOf: Float64Array, step: number, into: DayEquations): void {
  const zones = meter.flows.length;
  const minutes = design.minutes.subarray(step * zones, (step + 1) * zones);
  const total = minutes.reduce((sum, value) => sum + value, 0);
  const at = design.fromStep + step;
  const expected = litresOf[step] ?? Number.NaN;
  const off = (meter.usage.litres[at] ?? Number.NaN) - valueAt(meter.indoor, at) - valueAt(meter.claimed, at) - expected;
  if (!(total > 0) || Number.isNaN(off)) return;
  const variance = stepVariance(meter, at, expected, total);
  const most = WINSORIZED * Math.sqrt(variance + (expected / WINSORIZED) ** 2);
  const residual = Math.max(-most, Math.min(most, off));
  // A clock a minute later moves a minute's flow from each step to the next.
  const flow = (index: number) => valueAt(litresOf, index) / meter.usage.stepMinutes;
  const shifted = (flow(step - 1) - flow(step + 1)) / 2;
  addRow(minutes, [1 / variance, residual, shifted], into);
}

function addRow(minutes: Float64Array, [weight, residual, shifted]: readonly [number, number, number], into: DayEquations): void {
  const zones = minutes.length;
  for (let one = 0; one < zones; one++) {
    const own = weight * valueAt(minutes, one);
    if (own === 0) continue;
    into.residual[one] = valueAt(into.residual, one) + own * residual;
    into.perMinuteOfShift[one] = valueAt(into.perMinuteOfShift, one) + own * shifted;
    for (let other = 0; other < zones; other++) {
      const at = one * zones + other;
      into.gram[at] = valueAt(into.gram, at) + own * valueAt(minutes, other);
    }
  }
}
