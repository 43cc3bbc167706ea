import type { ObservedMeter } from '../steps/observed-meter.js';
import type { DayEquations } from './day-equations.js';
import { solveOn } from './nonnegative-least-squares.js';
import { valueAt } from '../steps/value-at.js';

/** Pressure moves all flows of a day by this share, and from season to season by that. Common practice, no source. */
const PRESSURE_OF_DAY = 0.03;
const PRESSURE_OF_SEASON = 0.03;
/** Each zone's run moves by itself by this share, and a flow wanders by that from when it was learnt. Common practice, no source. */
const RUN_OF_ZONE = 0.03;
const WANDERS = 0.02;
/** A flow that an open finding says to have changed is known by few runs. Common practice, no source. */
const CHANGED_WANDERS = 0.1;
/** What remains of the doubt of a clock after its shift is learnt, as share of a step of usage. Common practice, no source. */
const CLOCK_OF_STEP = 0.045;
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

/**
 * The change of each zone alone, and last of all zones together, that explains the residuals of some days best.
 *
 * c is normal with covariance S = G + G P G + pressure + runs + clock; a change δ of a zone moves its mean by δ · v, v = G e q:
 * δ = vᵀ S⁻¹ c / vᵀ S⁻¹ v, sd = (vᵀ S⁻¹ v)^−½
 *
 * @param meter - The meter, with flows q and their covariance P. [code]
 * @param days - Equations of the days. [code]
 * @param alike - Whether runs were as long on days from which flows were learnt: else flows and clocks are in more doubt. [–]
 * @returns A score for each zone, and one for all together; sd is infinite where the days say nothing of it. [–]
 * @source Generalized least squares: Aitken (1935); score of a mean shift: Basseville and Nikiforov (1993), Detection of Abrupt Changes, 7.2.
 */
export function changeScores(meter: ObservedMeter, days: readonly DayEquations[], alike: boolean): readonly ChangeScore[] {
  const zones = meter.flows.length;
  const gram = summed(days.map((day) => day.gram));
  const residual = summed(days.map((day) => day.residual));
  const spread = covarianceOf(meter, days, gram, alike ? 1 : UNALIKE);
  const ran = [...meter.flows.keys()].filter((zone) => valueAt(gram, zone * zones + zone) > 0);
  const silent = { change: 0, sd: Number.POSITIVE_INFINITY };
  if (!ran.length) return Array.from({ length: zones + 1 }, () => silent);
  const scoreAlong = (along: Float64Array): ChangeScore => {
    const solved = solveOn(spread, along, ran);
    const weight = ran.reduce((sum, zone, at) => sum + valueAt(solved, at) * valueAt(along, zone), 0);
    const evidence = ran.reduce((sum, zone, at) => sum + valueAt(solved, at) * valueAt(residual, zone), 0);
    return weight > 0 ? { change: evidence / weight, sd: 1 / Math.sqrt(weight) } : silent;
  };
  const alone = Array.from({ length: zones }, (_, zone) => {
    const column = Float64Array.from({ length: zones }, (__, row) => valueAt(gram, row * zones + zone) * valueAt(meter.flows, zone));
    return valueAt(column, zone) > 0 ? scoreAlong(column) : silent;
  });
  return [...alone, scoreAlong(times(gram, meter.flows))];
}

function summed(parts: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(parts[0]?.length ?? 0);
  for (const part of parts) for (let at = 0; at < sum.length; at++) sum[at] = valueAt(sum, at) + valueAt(part, at);
  return sum;
}

function times(gram: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  return Float64Array.from({ length: n }, (_, row) => {
    let sum = 0;
    for (let column = 0; column < n; column++) {
      const value = gram[row * n + column] ?? 0;
      if (value !== 0) sum += value * valueAt(vector, column);
    }
    return sum;
  });
}

function covarianceOf(meter: ObservedMeter, days: readonly DayEquations[], gram: Float64Array, doubt: number): Float64Array {
  const { flows } = meter;
  const n = flows.length;
  const spread = Float64Array.from(gram);
  addFlowDoubt(meter, gram, spread, doubt);
  addSquare(spread, times(gram, flows), PRESSURE_OF_SEASON);
  addSquare(
    spread,
    summed(days.map((day) => day.perMinuteOfShift)),
    doubt * Math.sqrt(meter.scatter) * CLOCK_OF_STEP * meter.usage.stepMinutes,
  );
  for (const day of days) {
    addSquare(spread, times(day.gram, flows), PRESSURE_OF_DAY);
    for (let zone = 0; zone < n; zone++) {
      if (!(valueAt(day.gram, zone * n + zone) > 0)) continue;
      addSquare(spread, day.gram.subarray(zone * n, (zone + 1) * n), meter.scatter * RUN_OF_ZONE * valueAt(flows, zone));
    }
  }
  for (let zone = 0; zone < n; zone++) spread[zone * n + zone] = valueAt(spread, zone * n + zone) * (1 + RIDGE);
  return spread;
}

// G P G, with what flows wander since they were learnt.
function addFlowDoubt(meter: ObservedMeter, gram: Float64Array, spread: Float64Array, sds: number): void {
  const { flows, flowCovariance, factors } = meter;
  const n = flows.length;
  const half = new Float64Array(n * n);
  for (let row = 0; row < n; row++) {
    const doubt = flowCovariance.slice(row * n, (row + 1) * n).map((value) => sds ** 2 * value);
    const wanders = factors[row] === 1 ? WANDERS : CHANGED_WANDERS;
    doubt[row] = valueAt(doubt, row) + (wanders * valueAt(flows, row)) ** 2;
    half.set(times(gram, doubt), row * n);
  }
  for (let row = 0; row < n; row++) {
    for (let column = 0; column < n; column++) {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += valueAt(gram, row * n + k) * valueAt(half, k * n + column);
      spread[row * n + column] = valueAt(spread, row * n + column) + sum;
    }
  }
}

function addSquare(spread: Float64Array, vector: Float64Array, sd: number): void {
  const n = vector.length;
  for (let row = 0; row < n; row++) {
    const own = sd * sd * valueAt(vector, row);
    if (own === 0) continue;
    for (let column = 0; column < n; column++) spread[row * n + column] = valueAt(spread, row * n + column) + own * valueAt(vector, column);
  }
}
