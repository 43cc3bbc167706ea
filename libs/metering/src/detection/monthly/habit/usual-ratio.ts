import type { IntervalVolumes } from '../interval-volumes.js';
import { covarianceOf, expectedOf, loadsOf } from './habit-loads.js';
import type { MeterHabit } from './meter-habit.js';

/**
 * The ratio of metered to programmed that a habit has where an interval's zones run.
 *
 * @param habit - The habit. [code]
 * @param volumes - The interval. [L]
 * @returns The ratio. [–]
 */
export function ratioOf(habit: MeterHabit, volumes: IntervalVolumes): number {
  return expectedOf(habit, sharesOf(habit, volumes));
}

/**
 * That ratio, and how sure it is.
 *
 * @param habit - The habit. [code]
 * @param volumes - The interval. [L]
 * @returns The ratio, and its standard deviation relative to it. [–]
 */
export function usualRatioOf(habit: MeterHabit, volumes: IntervalVolumes): { readonly ratio: number; readonly relativeSd: number } {
  const shares = sharesOf(habit, volumes);
  const ratio = expectedOf(habit, shares);
  return { ratio, relativeSd: Math.sqrt(covarianceOf(habit, shares, shares)) / ratio };
}

const sharesOf = (habit: MeterHabit, volumes: IntervalVolumes): Float64Array => loadsOf(habit, { ...volumes, programmed: 1, days: 0 });
