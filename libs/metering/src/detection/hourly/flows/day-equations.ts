import type { ObservedMeter, RunMinutes } from '../steps/observed-meter.js';
import { runMinutes, runsNear } from '../steps/run-minutes.js';
import { addSquare, timesVector } from '../../../statistics/square-matrices.kernel.js';
import { edgeVariance, stepVariance } from './step-variance.js';

/** A residual beyond this many standard deviations counts as that many: someone drew water beside the run. */
const WINSORIZED = 4;
/** What remains of the doubt of a clock after its shift is learnt, as share of a step of usage. Common practice, no source. */
export const CLOCK_OF_STEP = 0.1;
/** Each zone's run moves by itself by this share. Common practice, no source. */
const RUN_OF_ZONE = 0.03;

/**
 * What one day says of the zones' flows against those believed, and of the clock: G = Mᵀ W M, c = Mᵀ W r; weights W = 1 / variance, residuals r. M has
 * a column of minutes for each zone, and last what a clock that is a minute later than believed would add to each step.
 */
export interface DayEquations {
  readonly day: number;
  /** G, by rows of one more than there are zones. */
  readonly gram: Float64Array;
  readonly residual: Float64Array;
  /** Covariance of c by what is of this day alone: its pressure, and each zone's run. */
  readonly doubt: Float64Array;
}

/**
 * The equations of a day.
 *
 * @param meter - The meter as it is known. [code]
 * @param day - The day, from 0. [–]
 * @param design - Minutes of the day, where they are at hand. [min]
 * @returns G, c and the day's own covariance of c. [any]
 */
export function dayEquations(meter: ObservedMeter, day: number, design: RunMinutes = runMinutes(meter, day)): DayEquations {
  const { flows } = meter;
  const zones = flows.length;
  const size = zones + 1;
  const equations: DayEquations = {
    day,
    gram: new Float64Array(size * size),
    residual: new Float64Array(size),
    doubt: new Float64Array(size * size),
  };
  const believed = meter.factorOfDay.subarray(day * zones, (day + 1) * zones);
  const litresOf = litresByStep(meter, design, believed);
  // A zone that lacks water may pass all of it again: its steps are held to be no surer than then.
  const lacks = believed.some((factor) => factor < 1);
  const wholeLitres = lacks
    ? litresByStep(
        meter,
        design,
        believed.map((factor) => Math.max(1, factor)),
      )
    : litresOf;
  const edges = flowsAtEdges(meter, day, design);
  for (let step = 0; step < design.steps; step++) addStep(meter, { design, litresOf, wholeLitres, edges }, step, equations);
  const { gram, doubt } = equations;
  addSquare(doubt, timesVector(gram, flowsAndClock(flows, 0)), meter.pressureOfDay);
  for (let zone = 0; zone < zones; zone++) {
    if (!((gram[zone * (size + 1)] as number) > 0)) continue;
    addSquare(doubt, gram.subarray(zone * size, (zone + 1) * size), meter.scatter * RUN_OF_ZONE * (flows[zone] as number));
  }
  return equations;
}

/**
 * A vector of the equations.
 *
 * @param flows - One value by zone. [any]
 * @param clock - Minutes of the clock. [min]
 * @returns Both, the clock last. [any]
 */
export function flowsAndClock(flows: Float64Array, clock: number): Float64Array {
  const both = new Float64Array(flows.length + 1);
  both.set(flows);
  both[flows.length] = clock;
  return both;
}

/**
 * What a clock that is a minute later than believed has done to the flows learnt: P h, since they were fitted to the same steps; h is what it adds to c.
 * On days with the same runs it cancels what that clock does to their steps; on days with other runs it does not.
 *
 * @param meter - The meter, its flows and their covariance P just learnt. [code]
 * @param days - Days from which they were learnt. [–]
 * @param fixed - Zones that were not learnt: they keep what it did to them before. [–]
 * @returns Change of each flow by a minute. [L/min per min]
 */
export function flowsByShift(meter: ObservedMeter, days: readonly number[], fixed: ReadonlySet<number>): Float64Array {
  const zones = meter.flows.length;
  const before = meter.flowPerMinuteOfShift;
  const shifted = new Float64Array(zones);
  for (const day of days) {
    const { gram } = dayEquations(meter, day);
    for (let zone = 0; zone < zones; zone++) {
      let moved = gram[zone * (zones + 1) + zones] as number;
      for (const other of fixed)
        moved -=
          (gram[zone * (zones + 1) + other] as number) * (before[other] as number) * (meter.factorOfDay[day * zones + other] as number);
      shifted[zone] = (shifted[zone] as number) + moved;
    }
  }
  for (const zone of fixed) shifted[zone] = 0;
  const moved = timesVector(meter.flowCovariance, shifted);
  for (const zone of fixed) moved[zone] = before[zone] ?? 0;
  return moved;
}

// Litres of the runs in each step, by the flows believed and their factors.
function litresByStep({ flows }: ObservedMeter, { steps, minutes }: RunMinutes, factors: Float64Array): Float64Array {
  const zones = flows.length;
  const litresOf = new Float64Array(steps);
  for (let step = 0; step < steps; step++) {
    let litres = 0;
    for (let zone = 0; zone < zones; zone++) {
      const inStep = minutes[step * zones + zone] as number;
      if (inStep > 0) litres += inStep * (flows[zone] as number) * (factors[zone] as number);
    }
    litresOf[step] = litres;
  }
  return litresOf;
}

interface DayOfSteps {
  readonly design: RunMinutes;
  readonly litresOf: Float64Array;
  readonly wholeLitres: Float64Array;
  readonly edges: Float64Array;
}

// Mean flow of the runs about each edge between steps, from the begin of the first one to the end of the last. [L/min]
function flowsAtEdges(meter: ObservedMeter, day: number, { fromStep, steps }: RunMinutes): Float64Array {
  const { flows, factorOfDay, usage, shiftMinutes, controllerOf } = meter;
  const reach = CLOCK_OF_STEP * usage.stepMinutes;
  const begin = usage.firstMinute + fromStep * usage.stepMinutes;
  const edges = new Float64Array(steps + 1);
  for (const run of runsNear(meter, day)) {
    const shift = (shiftMinutes[controllerOf[run.zone] ?? 0] ?? 0) - begin;
    const flow = (flows[run.zone] as number) * (factorOfDay[day * flows.length + run.zone] ?? 1);
    const [from, until] = [run.begin + shift, run.end + shift];
    const last = Math.min(steps, Math.floor((until + reach) / usage.stepMinutes));
    for (let edge = Math.max(0, Math.ceil((from - reach) / usage.stepMinutes)); edge <= last; edge++) {
      const at = edge * usage.stepMinutes;
      const minutes = Math.min(until, at + reach) - Math.max(from, at - reach);
      edges[edge] = (edges[edge] as number) + (flow * minutes) / (2 * reach);
    }
  }
  return edges;
}

function addStep(meter: ObservedMeter, { design, litresOf, wholeLitres, edges }: DayOfSteps, step: number, into: DayEquations): void {
  const zones = meter.flows.length;
  const first = step * zones;
  let total = 0;
  for (let zone = 0; zone < zones; zone++) total += design.minutes[first + zone] as number;
  // A clock a minute later brings a minute of what ran before the step's begin, and takes one of what ran at its end.
  const shifted = (edges[step] as number) - (edges[step + 1] as number);
  if (!(total > 0 || shifted !== 0)) return;
  const at = design.fromStep + step;
  const expected = litresOf[step] as number;
  const off = (meter.usage.litres[at] as number) - (meter.indoor[at] as number) - (meter.claimed[at] as number) - expected;
  if (Number.isNaN(off)) return;
  const whole = wholeLitres[step] as number;
  const variance = total > 0 ? stepVariance(meter, at, whole, total) : edgeVariance(meter, at, Math.abs(shifted));
  const most = WINSORIZED * Math.sqrt(variance + (whole / WINSORIZED) ** 2);
  const residual = Math.max(-most, Math.min(most, off));
  const row = new Float64Array(zones + 1);
  row.set(design.minutes.subarray(first, first + zones));
  row[zones] = shifted;
  addRow(row, 1 / variance, residual, into);
}

function addRow(row: Float64Array, weight: number, residual: number, { gram, residual: sums }: DayEquations): void {
  const size = row.length;
  for (let one = 0; one < size; one++) {
    const own = weight * (row[one] as number);
    if (own === 0) continue;
    sums[one] = (sums[one] as number) + own * residual;
    for (let other = 0; other < size; other++) {
      const at = one * size + other;
      gram[at] = (gram[at] as number) + own * (row[other] as number);
    }
  }
}
