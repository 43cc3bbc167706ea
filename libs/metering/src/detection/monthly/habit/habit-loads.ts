import { valueAt } from '../../hourly/steps/value-at.js';
import type { IntervalVolumes } from '../interval-volumes.js';
import type { MeterHabit } from './meter-habit.js';

/**
 * What each unknown of a habit has in an interval: programmed water by zone, and days.
 *
 * @param habit - The habit; where the interval's mix of zones is not known it is as it was last, else all zones alike. [code]
 * @param volumes - The interval. [L]
 * @returns Programmed water by zone [L], and last the days.
 */
export function loadsOf(habit: MeterHabit, volumes: IntervalVolumes): Float64Array {
  const { zones } = habit;
  const { programmed, days } = volumes;
  const known = volumes.mix ?? habit.mix;
  const shareOf = (zoneId: string) => (known ? (known.get(zoneId) ?? 0) : 1 / zones.length);
  return Float64Array.from([...zones.map(({ zoneId }) => (programmed ?? 0) * shareOf(zoneId)), days]);
}

/**
 * The ratio of metered to programmed that a habit has where an interval's zones run.
 *
 * @param habit - The habit. [code]
 * @param volumes - The interval. [L]
 * @returns The ratio, and its standard deviation relative to it. [–]
 */
export function usualRatioOf(habit: MeterHabit, volumes: IntervalVolumes): { readonly ratio: number; readonly relativeSd: number } {
  const shares = loadsOf(habit, { ...volumes, programmed: 1, days: 0 });
  const ratio = expectedOf(habit, shares);
  return { ratio, relativeSd: Math.sqrt(covarianceOf(habit, shares, shares)) / ratio };
}

/**
 * How what is not known of a habit moves with an interval's water.
 *
 * @param habit - The habit. [code]
 * @param loads - Loads of the interval (`loadsOf`). [any]
 * @returns V · loads. [any]
 */
export function timesCovariance(habit: MeterHabit, loads: ArrayLike<number>): Float64Array {
  const { covariance } = habit;
  const n = loads.length;
  return Float64Array.from({ length: n }, (_, row) => {
    let sum = 0;
    for (let column = 0; column < n; column++) sum += valueAt(covariance, row * n + column) * valueAt(loads, column);
    return sum;
  });
}

/**
 * How far what a habit expects of two intervals is off together.
 *
 * @param habit - The habit. [code]
 * @param one - Loads of the one (`loadsOf`). [any]
 * @param other - Loads of the other. [any]
 * @returns oneᵀ · V · other. [L²]
 */
export function covarianceOf(habit: MeterHabit, one: ArrayLike<number>, other: ArrayLike<number>): number {
  return timesCovariance(habit, other).reduce((sum, value, at) => sum + value * valueAt(one, at), 0);
}

/**
 * What a habit expects of an interval.
 *
 * @param habit - The habit. [code]
 * @param loads - Loads of the interval (`loadsOf`). [any]
 * @returns Metered water. [L]
 */
export function expectedOf(habit: MeterHabit, loads: ArrayLike<number>): number {
  return habit.state.reduce((sum, value, at) => sum + value * valueAt(loads, at), 0);
}
