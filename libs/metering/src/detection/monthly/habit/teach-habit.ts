import { normalScore } from '../../../uncertainty/normal-score.js';
import { valueAt } from '../../hourly/steps/value-at.js';
import type { IntervalVolumes } from '../interval-volumes.js';
import { covarianceOf, expectedOf, loadsOf, timesCovariance } from './habit-loads.js';
import { ratioOf } from './usual-ratio.js';
import { loosened, type MeterHabit } from './meter-habit.js';

/** An interval beside the habit: what was expected, how far off, and how far off in standard deviations of a normal distribution. */
export interface Innovation {
  readonly expected: number;
  readonly excess: number;
  readonly sd: number;
  readonly score: number;
  /** Share of the variance that is noise in proportion to programmed water. [–] */
  readonly noiseShare: number;
}

/** Months are never taken to scatter by less: the meter's own error. An assumption. */
const LEAST_NOISE_SD = 0.012;

/** The habit itself may wander by half a percent from reading to reading, as heads wear and pressure follows the seasons. An assumption. */
export const WANDER_SD = 0.005;

/** What a single reading may teach: beyond two standard deviations less and less of the ratio, beyond three no more of the noise. */
const HUBER = 2;
const WINSOR = 3;

/** Readings that teach in full, since the flows on record may be far off. */
const FIRST_READINGS = 3;

/**
 * An interval beside the habit.
 *
 * r = M − hᵀ·x; variance = hᵀ·V·h + σ²·ratio²·ΣP² + what register, ends and walks leave open; since σ is learnt, r / sd has Student's
 * distribution, and is given as the normal score of the same probability
 *
 * @param habit - What is known before the interval. [code]
 * @param volumes - The interval; programmed must be known. [L]
 * @returns What was expected and how far off the meter is. [L]
 * @source Kalman (1960) for the prediction.
 */
export function innovationOf(habit: MeterHabit, volumes: IntervalVolumes): Innovation {
  const loads = loadsOf(habit, volumes);
  const expected = expectedOf(habit, loads);
  const noise = scatterOf(habit, volumes);
  const variance = covarianceOf(habit, loads, loads) + noise + volumes.ownVariance + volumes.startVariance + volumes.endVariance;
  const sd = Math.sqrt(variance);
  const noiseShare = variance > 0 ? noise / variance : 0;
  const excess = volumes.metered - expected;
  return {
    expected,
    excess,
    sd,
    score: sd > 0 ? normalScore(excess / sd, habit.freedom / Math.max(noiseShare, 1e-6) ** 2) : 0,
    noiseShare,
  };
}

/**
 * The habit after an interval has taught it.
 *
 * @param habit - What was known before. [code]
 * @param volumes - The interval. [L]
 * @returns What is known after it: ratios and offset by how far the interval is believed, noise by how far it was off. [code]
 */
export function taughtBy(habit: MeterHabit, volumes: IntervalVolumes): MeterHabit {
  const { excess, sd, noiseShare } = innovationOf(habit, volumes);
  const mix = volumes.mix ?? habit.mix;
  if (sd === 0) return { ...habit, mix };
  const off = Math.abs(excess / sd);
  const belief = (habit.taught < FIRST_READINGS ? 1 : Math.min(1, HUBER / off)) / sd ** 2;
  const told = timesCovariance(habit, loadsOf(habit, volumes));
  const freedom = habit.freedom + noiseShare;
  const taught = {
    ...habit,
    mix,
    state: habit.state.map((value, at) => value + belief * valueAt(told, at) * excess),
    covariance: lessened(habit.covariance, told, belief),
    noise: (habit.freedom * habit.noise + noiseShare * noiseVariance(habit) * Math.min(WINSOR, off) ** 2) / freedom,
    freedom,
    taught: habit.taught + ((volumes.programmed ?? 0) > 0 ? 1 : 0),
  };
  return loosened(taught, WANDER_SD);
}

// V − belief·(V·h)·(V·h)ᵀ, row by row.
function lessened(covariance: MeterHabit['covariance'], told: Float64Array, belief: number): Float64Array {
  const n = told.length;
  const left = new Float64Array(n * n);
  for (let row = 0; row < n; row++) {
    const share = belief * valueAt(told, row);
    for (let column = 0; column < n; column++)
      left[row * n + column] = valueAt(covariance, row * n + column) - share * valueAt(told, column);
  }
  return left;
}

/**
 * Relative standard deviation by which months scatter about the habit.
 *
 * @param habit - The habit. [code]
 * @returns The larger of what was learnt and what is always there. [–]
 */
export function noiseSd(habit: MeterHabit): number {
  return Math.sqrt(noiseVariance(habit));
}

/**
 * Variance of an interval's water by what months scatter: of each interval that is joined in it by itself.
 *
 * @param habit - The habit. [code]
 * @param volumes - The interval. [L]
 * @returns σ²·ratio²·ΣP². [L²]
 */
export function scatterOf(habit: MeterHabit, volumes: IntervalVolumes): number {
  return noiseVariance(habit) * ratioOf(habit, volumes) ** 2 * volumes.programmedSquares;
}

function noiseVariance({ noise }: MeterHabit): number {
  return Math.max(LEAST_NOISE_SD ** 2, noise);
}
