import { normalScore } from '../../../uncertainty/normal-score.js';
import { solveOn } from '../../../statistics/cholesky.kernel.js';
import { dot } from '../../../statistics/dot.kernel.js';
import { valueAt } from '../../hourly/steps/value-at.js';
import type { IntervalVolumes } from '../interval-volumes.js';
import { loadsOf, timesCovariance } from '../habit/habit-loads.js';
import { ratioOf } from '../habit/usual-ratio.js';
import type { MeterHabit } from '../habit/meter-habit.js';
import { innovationOf, scatterOf, WANDER_SD } from '../habit/teach-habit.js';

/** Share of the first interval that a change may have taken: all of it, or half where it began within it. */
const FIRST_SHARES = [1, 0.5] as const;

/** Keeps the equations solvable where nothing but rounding is left. [L²] */
const LEAST_VARIANCE = 1;

/** How well a lasting change explains some intervals together: its normal score, the larger the less like chance. */
export interface WindowScore {
  readonly score: number;
  /** Share of the first interval that the likeliest change took. [–] */
  readonly firstShare: number;
}

/**
 * The score of a change that lasts through some intervals, against the habit before them.
 *
 * x = M − expected has the covariance C = H V Hᵀ + wander + noise + ends; a change of shape u scores uᵀ C⁻¹ x / √(uᵀ C⁻¹ u), the matched filter. Shapes:
 * so many litres a day (a leak), or a share of what is programmed (more flow while something runs), from the begin of the first interval or
 * from its middle on; the best of them counts.
 *
 * @param habit - What was known before the first of them. [code]
 * @param intervals - The intervals, oldest first; programmed must be known. [L]
 * @returns The best score. [–]
 * @source Generalized least squares: Aitken (1935); Basseville and Nikiforov (1993), Detection of Abrupt Changes, 7.2.
 */
export function windowScore(habit: MeterHabit, intervals: readonly IntervalVolumes[]): WindowScore {
  const innovations = intervals.map((volumes) => innovationOf(habit, volumes));
  const spread = covarianceOf(habit, intervals);
  const excess = innovations.map((one) => one.excess);
  const all = intervals.map((_, at) => at);
  const noiseShare = innovations.reduce((sum, one) => sum + one.noiseShare, 0) / innovations.length;
  let best: WindowScore = { score: 0, firstShare: 1 };
  for (const firstShare of intervals.length > 1 ? FIRST_SHARES : [1]) {
    for (const weight of [({ days }: IntervalVolumes) => days, ({ programmed }: IntervalVolumes) => programmed ?? 0]) {
      const shape = Float64Array.from(intervals, (volumes, at) => (at === 0 ? firstShare : 1) * weight(volumes));
      const solved = solveOn(spread, shape, all);
      const [size, evidence] = [dot(solved, shape), dot(solved, excess)];
      if (!(size > 0)) continue;
      const score = normalScore(evidence / Math.sqrt(size), habit.freedom / Math.max(noiseShare, 1e-6) ** 2);
      if (Math.abs(score) > Math.abs(best.score)) best = { score, firstShare };
    }
  }
  return best;
}

// The ratio wanders from each interval to the next, and what it wandered is in all that follow.
function covarianceOf(habit: MeterHabit, intervals: readonly IntervalVolumes[]): Float64Array {
  const n = intervals.length;
  const spread = new Float64Array(n * n);
  const loads = intervals.map((volumes) => loadsOf(habit, volumes));
  const products = loads.map((one) => timesCovariance(habit, one));
  const scaled = intervals.map((volumes) => ratioOf(habit, volumes) * (volumes.programmed ?? 0));
  for (let row = 0; row < n; row++) {
    for (let column = 0; column < n; column++) {
      const wandered = WANDER_SD ** 2 * Math.min(row, column) * valueAt(scaled, row) * valueAt(scaled, column);
      spread[row * n + column] = dot(products[column] ?? [], loads[row] ?? []) + wandered;
    }
    const own = intervals[row] as IntervalVolumes;
    spread[row * n + row] = valueAt(spread, row * n + row) + varianceOf(habit, own);
    const next = intervals[row + 1];
    // What ran on the other side of a boundary is missing there and more here.
    if (next) addShared(spread, [row, n], -Math.min(own.endVariance, next.startVariance));
  }
  return spread;
}

function varianceOf(habit: MeterHabit, own: IntervalVolumes): number {
  return scatterOf(habit, own) + own.ownVariance + own.startVariance + own.endVariance + LEAST_VARIANCE;
}

function addShared(spread: Float64Array, [row, n]: readonly [number, number], covariance: number): void {
  for (const at of [row * n + row + 1, (row + 1) * n + row]) spread[at] = valueAt(spread, at) + covariance;
}
