import type { ObservedMeter, RunMinutes } from '../steps/observed-meter.js';
import { runMinutes } from '../steps/run-minutes.js';
import { choleskyOf, solveByCholesky } from '../../../statistics/cholesky.kernel.js';
import { nonnegativeLeastSquares } from '../../../statistics/nonnegative-least-squares.js';
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

/** Steps in which zones ran, each with its litres; the minutes of step i stand from `firsts[i]` to `firsts[i + 1]`, with their zones. */
interface Rows {
  readonly count: number;
  readonly steps: number[];
  readonly litres: number[];
  readonly firsts: number[];
  readonly zones: number[];
  readonly minutes: number[];
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
  const covariance = inverse(normal.gram, rows.count);
  const told = prior.map(([, before], zone) => Math.sqrt(valueAt(covariance, zone * (rows.count + 1))) <= TOLD_SHARE * before);
  fixed.forEach((zone) => {
    flows[zone] = meter.flows[zone] ?? Number.NaN;
    told[zone] = false;
  });
  return { litresPerMinute: Float64Array.from(flows), covariance, told, misfit: normal.misfit };
}

function rowsOf(meter: ObservedMeter, days: readonly number[], fixed: ReadonlySet<number>): Rows {
  const rows: Rows = { count: meter.flows.length, steps: [], litres: [], firsts: [0], zones: [], minutes: [] };
  for (const day of days) {
    const design = runMinutes(meter, day);
    for (let step = 0; step < design.steps; step++) addRow(meter, rows, { design, step, day }, fixed);
  }
  return rows;
}

function addRow(
  meter: ObservedMeter,
  rows: Rows,
  { design, step, day }: { readonly design: RunMinutes; readonly step: number; readonly day: number },
  fixed: ReadonlySet<number>,
): void {
  const { count } = rows;
  const at = design.fromStep + step;
  let litres = (meter.usage.litres[at] as number) - (meter.indoor[at] as number) - (meter.claimed[at] as number);
  if (Number.isNaN(litres)) return;
  let ran = false;
  for (let zone = 0; zone < count; zone++) {
    const minutes = design.minutes[step * count + zone] as number;
    if (minutes <= 0) continue;
    ran = true;
    const factor = meter.factorOfDay[day * count + zone] as number;
    const taken = fixed.has(zone) ? factor : factor - 1;
    // A flow that is not known yet is not taken off; where none has changed there is nothing to take.
    if (taken !== 0) litres -= taken * (meter.flows[zone] as number) * minutes;
    if (fixed.has(zone)) continue;
    rows.zones.push(zone);
    rows.minutes.push(minutes);
  }
  if (!ran) return;
  rows.litres.push(litres);
  rows.steps.push(at);
  rows.firsts.push(rows.zones.length);
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
  rows: Rows,
  prior: readonly (readonly [number, number])[],
  flows: readonly number[],
): { readonly gram: Float64Array; readonly right: Float64Array; readonly misfit: number } {
  const { count, steps, litres, firsts } = rows;
  const gram = new Float64Array(count * count);
  const right = new Float64Array(count);
  let misfit = 0;
  prior.forEach(([flow, sd], zone) => {
    gram[zone * count + zone] = 1 / sd ** 2;
    right[zone] = flow / sd ** 2;
    misfit += ((flows[zone] as number) / sd - flow / sd) ** 2;
  });
  for (let row = 0; row < steps.length; row++) {
    const span = [firsts[row] as number, firsts[row + 1] as number] as const;
    const [total, expected] = totalsOf(rows, span, flows);
    if (!(total > 0)) continue;
    const used = litres[row] as number;
    const variance = stepVariance(meter, steps[row] as number, expected, total);
    const off = Math.abs(used - expected) / Math.sqrt(variance);
    misfit += Math.min(off, HUBER) * off;
    addTo(rows, span, { gram, right }, { used, weight: (off > HUBER ? HUBER / off : 1) / variance });
  }
  return { gram, right, misfit };
}

// Minutes of a step, and the litres of them by these flows.
function totalsOf({ minutes, zones }: Rows, [first, last]: readonly [number, number], flows: readonly number[]): readonly [number, number] {
  let [total, expected] = [0, 0];
  for (let at = first; at < last; at++) {
    const own = minutes[at] as number;
    total += own;
    expected += own * (flows[zones[at] as number] as number);
  }
  return [total, expected];
}

function addTo(
  { count, zones, minutes }: Rows,
  [first, last]: readonly [number, number],
  { gram, right }: { readonly gram: Float64Array; readonly right: Float64Array },
  { used, weight }: { readonly used: number; readonly weight: number },
): void {
  for (let one = first; one < last; one++) {
    const zone = zones[one] as number;
    const own = weight * (minutes[one] as number);
    right[zone] = (right[zone] as number) + own * used;
    for (let other = first; other < last; other++) {
      const at = zone * count + (zones[other] as number);
      gram[at] = (gram[at] as number) + own * (minutes[other] as number);
    }
  }
}

// The covariance is the inverse.
function inverse(gram: Float64Array, zones: number): Float64Array {
  const factor = choleskyOf(
    gram,
    zones,
    Int32Array.from({ length: zones }, (_, zone) => zone),
  );
  const rows = new Float64Array(zones * zones);
  for (let zone = 0; zone < zones; zone++) {
    const unit = new Float64Array(zones);
    unit[zone] = 1;
    rows.set(solveByCholesky(factor, unit), zone * zones);
  }
  return rows;
}
