import { dot } from '../../../statistics/dot.kernel.js';
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
  const loads = new Float64Array(zones.length + 1);
  for (const [at, { zoneId }] of zones.entries()) loads[at] = (programmed ?? 0) * shareOf(zoneId);
  loads[zones.length] = days;
  return loads;
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
  const product = new Float64Array(n);
  for (let row = 0; row < n; row++) {
    let sum = 0;
    for (let column = 0; column < n; column++) sum += valueAt(covariance, row * n + column) * valueAt(loads, column);
    product[row] = sum;
  }
  return product;
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
  return dot(timesCovariance(habit, other), one);
}

/**
 * What a habit expects of an interval.
 *
 * @param habit - The habit. [code]
 * @param loads - Loads of the interval (`loadsOf`). [any]
 * @returns Metered water. [L]
 */
export function expectedOf(habit: MeterHabit, loads: ArrayLike<number>): number {
  return dot(habit.state, loads);
}
