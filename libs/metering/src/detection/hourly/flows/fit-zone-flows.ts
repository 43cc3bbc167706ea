import type { ObservedMeter } from '../steps/observed-meter.js';
import { runMinutes } from '../steps/run-minutes.js';
import { nonnegativeLeastSquares, solveOn } from './nonnegative-least-squares.js';
import { stepVariance } from './step-variance.js';
import { valueAt } from '../steps/value-at.js';

/** Residuals beyond this many standard deviations weigh less. Huber (1964): 95 % efficient where all is normal. */
const HUBER = 1.345;
/** Fits with new weights: they hardly move after the third. */
const PASSES = 3;
/** A flow that is not on record may be off by this share of the mean flow. Common practice, no source. */
const UNKNOWN_RELATIVE_SD = 1;
/** A flow on record is held to be no surer than this: nobody measured it on this meter. Common practice, no source. */
const LEAST_RELATIVE_SD = 0.15;
/** Usage tells a zone's flow when the spread that remains is at most this share of that of the record. */
const TOLD_SHARE = 0.5;

/** Flows of the zones as usage and run times tell them. */
export interface ZoneFlows {
  readonly litresPerMinute: Float64Array;
  /** Their covariance, by rows. */
  readonly covariance: Float64Array;
  /** Whether usage told it; else it is little more than the record. */
  readonly told: readonly boolean[];
  /** Σ w · residual² / var of the steps and Σ (flow − record)² / sd² of the zones, the less the better. */
  readonly misfit: number;
}

interface Rows {
  readonly zones: number;
  readonly minutes: number[];
  readonly litres: number[];
  readonly steps: number[];
}

/**
 * Estimates the zones' flows from usage and run times: least squares with no flow below zero, wild steps weighing less, drawn towards the
 * flows on record by how far those may be off.
 *
 * min over q ≥ 0 of Σ w · (litres − Σ minutes · q)² / var + Σ (q − record)² / sd²
 *
 * @param meter - The meter as it is known; what indoor use and findings explain is taken off first. [code]
 * @param days - Days on which runs passed water. [–]
 * @param fixed - Zones whose flow is not asked, because an open finding says that it changed. [–]
 * @returns Flows with their standard deviations. [L/min]
 * @source Least squares: Lawson and Hanson (1974); weights: Huber (1964).
 */
export function fitZoneFlows(meter: ObservedMeter, days: readonly number[], fixed: ReadonlySet<number>): ZoneFlows {
  const rows = rowsOf(meter, days, fixed);
  const prior = priorOf(meter, rows);
  let flows = prior.map(([flow]) => flow);
  let normal = normalEquations(meter, rows, prior, flows);
  for (let pass = 0; pass < PASSES; pass++) {
    flows = [...nonnegativeLeastSquares(normal.gram, normal.right)];
    normal = normalEquations(meter, rows, prior, flows);
  }
  const covariance = inverse(normal.gram, rows.zones);
  const told = prior.map(([, before], zone) => Math.sqrt(valueAt(covariance, zone * (rows.zones + 1))) <= TOLD_SHARE * before);
  fixed.forEach((zone) => {
    flows[zone] = meter.flows[zone] ?? Number.NaN;
    told[zone] = false;
  });
  return { litresPerMinute: Float64Array.from(flows), covariance, told, misfit: normal.misfit };
}

function rowsOf(meter: ObservedMeter, days: readonly number[], fixed: ReadonlySet<number>): Rows {
  const zones = meter.flows.length;
  const rows: Rows = { zones, minutes: [], litres: [], steps: [] };
  for (const day of days) {
    const design = runMinutes(meter, day);
    for (let step = 0; step < design.steps; step++) {
      const at = design.fromStep + step;
      const rest = (meter.usage.litres[at] ?? Number.NaN) - valueAt(meter.indoor, at) - valueAt(meter.claimed, at);
      const inStep = design.minutes.subarray(step * zones, (step + 1) * zones);
      if (Number.isNaN(rest) || !inStep.some((minutes) => minutes > 0)) continue;
      addRow(meter, rows, { step: at, day, rest, inStep }, fixed);
    }
  }
  return rows;
}

function addRow(
  meter: ObservedMeter,
  rows: Rows,
  { step, day, rest, inStep }: { step: number; day: number; rest: number; inStep: Float64Array },
  fixed: ReadonlySet<number>,
): void {
  let litres = rest;
  inStep.forEach((minutes, zone) => {
    const factor = meter.factorOfDay[day * rows.zones + zone] ?? 1;
    const known = (meter.flows[zone] ?? Number.NaN) * minutes;
    const taken = fixed.has(zone) ? factor : factor - 1;
    if (minutes > 0 && taken !== 0) litres -= taken * known;
    rows.minutes.push(fixed.has(zone) ? 0 : minutes);
  });
  rows.litres.push(litres);
  rows.steps.push(step);
}

function priorOf({ evidence }: ObservedMeter, rows: Rows): readonly (readonly [number, number])[] {
  const litres = rows.litres.reduce((sum, value) => sum + Math.max(0, value), 0);
  const minutes = rows.minutes.reduce((sum, value) => sum + value, 0);
  const mean = minutes > 0 && litres > 0 ? litres / minutes : 1;
  return evidence.zones.map(({ flowLPerMin, flowRelativeSd }) =>
    flowLPerMin !== null && flowLPerMin > 0
      ? [flowLPerMin, flowLPerMin * Math.max(flowRelativeSd, LEAST_RELATIVE_SD)]
      : [mean, mean * UNKNOWN_RELATIVE_SD],
  );
}

function normalEquations(
  meter: ObservedMeter,
  { zones, minutes, litres, steps }: Rows,
  prior: readonly (readonly [number, number])[],
  flows: readonly number[],
): { readonly gram: Float64Array; readonly right: Float64Array; readonly misfit: number } {
  const gram = new Float64Array(zones * zones);
  const right = new Float64Array(zones);
  let misfit = 0;
  prior.forEach(([flow, sd], zone) => {
    gram[zone * zones + zone] = 1 / sd ** 2;
    right[zone] = flow / sd ** 2;
    misfit += (valueAt(flows, zone) / sd - flow / sd) ** 2;
  });
  steps.forEach((step, row) => {
    const inStep = minutes.slice(row * zones, (row + 1) * zones);
    const used = litres[row] ?? Number.NaN;
    const total = inStep.reduce((sum, value) => sum + value, 0);
    const expected = inStep.reduce((sum, value, zone) => sum + value * valueAt(flows, zone), 0);
    if (!(total > 0)) return;
    const variance = stepVariance(meter, step, expected, total);
    const off = Math.abs(used - expected) / Math.sqrt(variance);
    misfit += Math.min(off, HUBER) * off;
    addTo(gram, right, { inStep, used, weight: (off > HUBER ? HUBER / off : 1) / variance });
  });
  return { gram, right, misfit };
}

function addTo(
  gram: Float64Array,
  right: Float64Array,
  { inStep, used, weight }: { readonly inStep: readonly number[]; readonly used: number; readonly weight: number },
): void {
  inStep.forEach((minutes, one) => {
    if (minutes === 0) return;
    right[one] = valueAt(right, one) + weight * minutes * used;
    inStep.forEach((other, column) => {
      const at = one * right.length + column;
      gram[at] = valueAt(gram, at) + weight * minutes * other;
    });
  });
}

// The covariance is the inverse.
function inverse(gram: Float64Array, zones: number): Float64Array {
  const all = Array.from({ length: zones }, (_, zone) => zone);
  const rows = new Float64Array(zones * zones);
  for (const zone of all) {
    const unit = new Float64Array(zones);
    unit[zone] = 1;
    rows.set(solveOn(gram, unit, all), zone * zones);
  }
  return rows;
}
