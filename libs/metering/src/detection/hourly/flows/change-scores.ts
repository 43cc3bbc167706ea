import type { ObservedMeter } from '../steps/observed-meter.js';
import { CLOCK_OF_STEP, type DayEquations, flowsAndClock } from './day-equations.js';
import { dot } from '../../../statistics/dot.kernel.js';
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
 * δ = vᵀ S⁻¹ c / vᵀ S⁻¹ v, sd = (vᵀ S⁻¹ v)^−½; the clock is a column of M, so that the steps themselves say what of it there is
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
  const size = zones + 1;
  const gram = summed(days.map((day) => day.gram));
  const residual = summed(days.map((day) => day.residual));
  const ran = Int32Array.from(Array(size).keys()).filter((place) => (gram[place * (size + 1)] as number) > 0);
  const silent = { change: 0, sd: Number.POSITIVE_INFINITY };
  if (!ran.length) return { scores: Array.from({ length: zones + 1 }, () => silent), whileRunning: silent };
  const factor = choleskyOf(covarianceOf(meter, days, gram, alike ? 1 : UNALIKE), size, ran);
  // S⁻¹ c once: vᵀ S⁻¹ c is its sum along v.
  const solvedResidual = solveByCholesky(factor, ofRan(residual, ran));
  const scoreAlong = (along: Float64Array): ChangeScore => {
    const own = ofRan(along, ran);
    const weight = dot(solveByCholesky(factor, own), own);
    return weight > 0 ? { change: dot(solvedResidual, own) / weight, sd: 1 / Math.sqrt(weight) } : silent;
  };
  const alone = Array.from({ length: zones }, (_, zone) => {
    if (!((gram[zone * (size + 1)] as number) * (flows[zone] as number) > 0)) return silent;
    const along = gram.slice(zone * size, (zone + 1) * size);
    for (let at = 0; at < size; at++) along[at] = (along[at] as number) * (flows[zone] as number);
    return scoreAlong(along);
  });
  return {
    scores: [...alone, scoreAlong(timesVector(gram, flowsAndClock(flows, 0)))],
    whileRunning: scoreAlong(timesVector(gram, flowsAndClock(new Float64Array(zones).fill(1), 0))),
  };
}

function ofRan(values: Float64Array, ran: Int32Array): Float64Array {
  const own = new Float64Array(ran.length);
  for (let at = 0; at < own.length; at++) own[at] = values[ran[at] as number] as number;
  return own;
}

function covarianceOf(meter: ObservedMeter, days: readonly DayEquations[], gram: Float64Array, doubt: number): Float64Array {
  const { flows, flowPerMinuteOfShift, factors, usage } = meter;
  const size = flows.length + 1;
  const spread = summed(days.map((day) => day.doubt));
  for (let at = 0; at < spread.length; at++) spread[at] = (spread[at] as number) + (gram[at] as number);
  addSandwich(spread, gram, flowDoubt(meter, doubt));
  addSquare(spread, timesVector(gram, flowsAndClock(flows, 0)), PRESSURE_OF_SEASON);
  // A clock a minute later adds to the steps, less what it did to the flows when they were learnt.
  const learnt = flowPerMinuteOfShift.map((flow, zone) => -flow * (factors[zone] ?? 1));
  addSquare(spread, timesVector(gram, flowsAndClock(learnt, 1)), CLOCK_OF_STEP * usage.stepMinutes);
  for (let place = 0; place < size; place++) spread[place * (size + 1)] = (spread[place * (size + 1)] as number) * (1 + RIDGE);
  return spread;
}

// P with what flows wander since they were learnt; none of the clock.
function flowDoubt({ flows, flowCovariance, factors }: ObservedMeter, sds: number): Float64Array {
  const zones = flows.length;
  const doubt = new Float64Array((zones + 1) ** 2);
  for (let zone = 0; zone < zones; zone++) {
    const first = zone * (zones + 1);
    for (let other = 0; other < zones; other++) doubt[first + other] = sds ** 2 * (flowCovariance[zone * zones + other] as number);
    const wanders = factors[zone] === 1 ? WANDERS : CHANGED_WANDERS;
    doubt[first + zone] = (doubt[first + zone] as number) + (wanders * (flows[zone] as number)) ** 2;
  }
  return doubt;
}
