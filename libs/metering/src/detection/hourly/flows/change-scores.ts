import type { ObservedMeter } from '../steps/observed-meter.js';
import { CLOCK_OF_STEP, type DayEquations } from './day-equations.js';
import { choleskyOf, solveByCholesky } from '../../../statistics/cholesky.kernel.js';
import { addSandwich, addSquare, summed, timesVector } from '../../../statistics/square-matrices.kernel.js';

/** Pressure moves all flows by this share from season to season. Common practice, no source. */
const PRESSURE_OF_SEASON = 0.03;
/** A flow wanders by this share from when it was learnt. Common practice, no source. */
const WANDERS = 0.02;
/** A flow that an open finding says to have changed is known by few runs. Common practice, no source. */
const CHANGED_WANDERS = 0.1;
/** Where runs have another length than when flows were learnt, their doubt and that of the clock is this many times. Common practice, no source. */
const UNALIKE = 2.5;
/** Keeps equations solvable where zones always run together. */
const RIDGE = 1e-9;

/** How far one change of flow explains the residuals of some days. */
export interface ChangeScore {
  /** Change as a share of the flow believed. */
  readonly change: number;
  /** Its standard deviation. */
  readonly sd: number;
}

/** Scores of the causes that are told apart. */
export interface ChangeScores {
  /** Each zone alone, and last all zones together by the same share. */
  readonly scores: readonly ChangeScore[];
  /** A flow that is the same while anything runs: litres a minute. */
  readonly whileRunning: ChangeScore;
}

/**
 * The change of each zone alone, and last of all zones together, that explains the residuals of some days best.
 *
 * c is normal with covariance S = G + G P G + pressure + runs + clock; a change δ of a zone moves its mean by δ · v, v = G e q:
 * δ = vᵀ S⁻¹ c / vᵀ S⁻¹ v, sd = (vᵀ S⁻¹ v)^−½
 *
 * @param meter - The meter, with flows q and their covariance P. [code]
 * @param days - Equations of the days. [code]
 * @param alike - Whether runs were as long on days from which flows were learnt: else flows and clocks are in more doubt. [–]
 * @returns A score for each zone and for all together, and one of a flow that is added while anything runs; sd is infinite where the days say nothing of it. [–]
 * @source Generalized least squares: Aitken (1935); score of a mean shift: Basseville and Nikiforov (1993), Detection of Abrupt Changes, 7.2.
 */
export function changeScores(meter: ObservedMeter, days: readonly DayEquations[], alike: boolean): ChangeScores {
  const { flows } = meter;
  const zones = flows.length;
  const gram = summed(days.map((day) => day.gram));
  const residual = summed(days.map((day) => day.residual));
  const ran = Int32Array.from(flows.keys()).filter((zone) => (gram[zone * (zones + 1)] as number) > 0);
  const silent = { change: 0, sd: Number.POSITIVE_INFINITY };
  if (!ran.length) return { scores: Array.from({ length: zones + 1 }, () => silent), whileRunning: silent };
  const factor = choleskyOf(covarianceOf(meter, days, gram, alike ? 1 : UNALIKE), zones, ran);
  // S⁻¹ c once: vᵀ S⁻¹ c is its sum along v.
  const solvedResidual = solveByCholesky(factor, ofRan(residual, ran));
  const scoreAlong = (along: Float64Array): ChangeScore => {
    const own = ofRan(along, ran);
    const weight = dot(solveByCholesky(factor, own), own);
    return weight > 0 ? { change: dot(solvedResidual, own) / weight, sd: 1 / Math.sqrt(weight) } : silent;
  };
  const alone = Array.from({ length: zones }, (_, zone) => {
    if (!((gram[zone * (zones + 1)] as number) * (flows[zone] as number) > 0)) return silent;
    const along = gram.slice(zone * zones, (zone + 1) * zones);
    for (let at = 0; at < zones; at++) along[at] = (along[at] as number) * (flows[zone] as number);
    return scoreAlong(along);
  });
  return {
    scores: [...alone, scoreAlong(timesVector(gram, flows))],
    whileRunning: scoreAlong(timesVector(gram, new Float64Array(zones).fill(1))),
  };
}

function ofRan(values: Float64Array, ran: Int32Array): Float64Array {
  const own = new Float64Array(ran.length);
  for (let at = 0; at < own.length; at++) own[at] = values[ran[at] as number] as number;
  return own;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += (one[at] as number) * (other[at] as number);
  return sum;
}

function covarianceOf(meter: ObservedMeter, days: readonly DayEquations[], gram: Float64Array, doubt: number): Float64Array {
  const { flows } = meter;
  const n = flows.length;
  const spread = summed(days.map((day) => day.doubt));
  for (let at = 0; at < spread.length; at++) spread[at] = (spread[at] as number) + (gram[at] as number);
  addFlowDoubt(meter, gram, spread, doubt);
  addSquare(spread, timesVector(gram, flows), PRESSURE_OF_SEASON);
  addSquare(spread, movedByClock(meter, days, gram), CLOCK_OF_STEP * meter.usage.stepMinutes);
  for (let zone = 0; zone < n; zone++) spread[zone * (n + 1)] = (spread[zone * (n + 1)] as number) * (1 + RIDGE);
  return spread;
}

// h − G · ∂q: what a clock a minute later does to the steps, less what it did to the flows when they were learnt.
function movedByClock(meter: ObservedMeter, days: readonly DayEquations[], gram: Float64Array): Float64Array {
  const moved = summed(days.map((day) => day.perMinuteOfShift));
  const learnt = timesVector(
    gram,
    meter.flowPerMinuteOfShift.map((flow, zone) => flow * (meter.factors[zone] ?? 1)),
  );
  for (let zone = 0; zone < moved.length; zone++) moved[zone] = (moved[zone] as number) - (learnt[zone] as number);
  return moved;
}

// G P G, with what flows wander since they were learnt.
function addFlowDoubt({ flows, flowCovariance, factors }: ObservedMeter, gram: Float64Array, spread: Float64Array, sds: number): void {
  const n = flows.length;
  const doubt = flowCovariance.slice();
  if (sds !== 1) for (let at = 0; at < doubt.length; at++) doubt[at] = sds ** 2 * (doubt[at] as number);
  for (let zone = 0; zone < n; zone++) {
    const wanders = factors[zone] === 1 ? WANDERS : CHANGED_WANDERS;
    doubt[zone * (n + 1)] = (doubt[zone * (n + 1)] as number) + (wanders * (flows[zone] as number)) ** 2;
  }
  addSandwich(spread, gram, doubt);
}
