import { normalScore } from '../../uncertainty/normal-score.js';
import type { IntervalVolumes } from './interval-volumes.js';

/**
 * What is known of a meter's habit: metered = e^logRatio · programmed + indoorOffset · days, with the covariance of both, and how months
 * scatter about it, `noise` as a relative variance of programmed water learnt from as many readings as `freedom` says.
 */
export interface MeterHabit {
  readonly logRatio: number;
  readonly indoorOffset: number;
  readonly ratioVariance: number;
  readonly covariance: number;
  readonly offsetVariance: number;
  readonly noise: number;
  readonly freedom: number;
  readonly taught: number;
}

/** An interval beside the habit: what was expected, how far off, and how far off in standard deviations of a normal distribution. */
export interface Innovation {
  readonly expected: number;
  readonly excess: number;
  readonly sd: number;
  readonly score: number;
  /** Share of the variance that is noise in proportion to programmed water. [–] */
  readonly noiseShare: number;
}

/**
 * Before months are seen they are taken to scatter by 2.8 %, which five readings outweigh: a meter is good to 1.5 % and recorded flows follow
 * pressure. An assumption on the safe side; it is learnt.
 */
const PRIOR_NOISE_SD = 0.028;
const PRIOR_FREEDOM = 5;

/** Months are never taken to scatter by less: the meter's own error. An assumption. */
const LEAST_NOISE_SD = 0.012;

/** The habit itself may wander by half a percent from reading to reading, as heads wear and pressure follows the seasons: its variance. An assumption. */
export const wanderVariance = 0.005 ** 2;

/**
 * However flows on record were found, all of a meter's may be off together by this much: a wrong unit, another nozzle, a test at another
 * pressure. Before readings have told the ratio, no more than that is a leak. An assumption on the safe side.
 */
const LEAST_RATIO_SD = 0.15;

/** What a single reading may teach: beyond two standard deviations less and less of the ratio, beyond three no more of the noise. */
const HUBER = 2;
const WINSOR = 3;

/** Readings that teach in full, since the flows on record may be far off. */
const FIRST_READINGS = 3;

/**
 * The habit of a meter before anything is read: the flows on record, within their uncertainty.
 *
 * @param ratioSd - How far the flows on record may be off altogether. [–]
 * @param offsetSd - How far the stated indoor share may be off; 0 without one. [L/d]
 * @returns The habit. [code]
 */
export function habitOnRecord(ratioSd: number, offsetSd: number): MeterHabit {
  return {
    logRatio: 0,
    indoorOffset: 0,
    ratioVariance: Math.max(ratioSd, LEAST_RATIO_SD) ** 2,
    covariance: 0,
    offsetVariance: offsetSd ** 2,
    noise: PRIOR_NOISE_SD ** 2,
    freedom: PRIOR_FREEDOM,
    taught: 0,
  };
}

/**
 * An interval beside the habit.
 *
 * r = M − e^b·P − c·d; variance = H·V·Hᵀ + σ²·e^2b·ΣP² + what register, ends and walks leave open; since σ is learnt, r / sd has Student's
 * distribution, and is given as the normal score of the same probability
 *
 * @param habit - What is known before the interval. [code]
 * @param volumes - The interval; programmed must be known. [L]
 * @returns What was expected and how far off the meter is. [L]
 * @source Kalman (1960) for the prediction.
 */
export function innovationOf(habit: MeterHabit, volumes: IntervalVolumes): Innovation {
  const ratio = Math.exp(habit.logRatio);
  const scaled = ratio * (volumes.programmed ?? 0);
  const expected = scaled + habit.indoorOffset * volumes.days;
  const parameters =
    scaled ** 2 * habit.ratioVariance + 2 * scaled * volumes.days * habit.covariance + volumes.days ** 2 * habit.offsetVariance;
  const noise = noiseVariance(habit) * ratio ** 2 * volumes.programmedSquares;
  const variance = parameters + noise + volumes.ownVariance + volumes.startVariance + volumes.endVariance;
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
 * @returns What is known after it: ratio and offset by how far the interval is believed, noise by how far it was off. [code]
 */
export function taughtBy(habit: MeterHabit, volumes: IntervalVolumes): MeterHabit {
  const { excess, sd, noiseShare } = innovationOf(habit, volumes);
  if (sd === 0) return habit;
  const off = Math.abs(excess / sd);
  const scaled = Math.exp(habit.logRatio) * (volumes.programmed ?? 0);
  const belief = (habit.taught < FIRST_READINGS ? 1 : Math.min(1, HUBER / off)) / sd ** 2;
  const ratioTold = habit.ratioVariance * scaled + habit.covariance * volumes.days;
  const offsetTold = habit.covariance * scaled + habit.offsetVariance * volumes.days;
  const freedom = habit.freedom + noiseShare;
  return {
    logRatio: habit.logRatio + belief * ratioTold * excess,
    indoorOffset: habit.indoorOffset + belief * offsetTold * excess,
    ratioVariance: habit.ratioVariance - belief * ratioTold ** 2 + wanderVariance,
    covariance: habit.covariance - belief * ratioTold * offsetTold,
    offsetVariance: habit.offsetVariance - belief * offsetTold ** 2,
    noise: (habit.freedom * habit.noise + noiseShare * noiseVariance(habit) * Math.min(WINSOR, off) ** 2) / freedom,
    freedom,
    taught: habit.taught + (scaled > 0 ? 1 : 0),
  };
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

function noiseVariance({ noise }: MeterHabit): number {
  return Math.max(LEAST_NOISE_SD ** 2, noise);
}
