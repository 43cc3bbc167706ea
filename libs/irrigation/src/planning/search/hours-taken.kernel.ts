import { type Assignment, type Ground, minutesOfSlots, programLimit } from '../pricing/assignment.js';

const WEEK = 7;
const DUST = 1e-6;

/** Minutes that programs take of their limits and of the days of a week; changed as zones move. Weekdays are bits, Monday the lowest. [min] */
export interface HoursTaken {
  readonly perDay: number;
  readonly minutes: Float64Array;
  readonly limits: Float64Array;
  readonly masks: Int32Array;
  readonly loads: Float64Array;
}

/**
 * What an assignment takes.
 *
 * @param ground - Limits of a day and of programs. [min]
 * @param assignment - The assignment, its days settled. [–]
 * @returns Minutes taken. [min]
 */
export function hoursTaken(ground: Ground, assignment: Assignment): HoursTaken {
  const { options, patterns } = assignment;
  const taken: HoursTaken = {
    perDay: ground.perDay,
    minutes: new Float64Array(options.length),
    limits: Float64Array.from(options, (option) => (option ? programLimit(ground, option) : 0)),
    masks: Int32Array.from(patterns, (pattern) => pattern?.mask ?? 0),
    loads: new Float64Array(WEEK),
  };
  minutesOfSlots(ground, assignment).forEach((minutes, slot) => take(taken, slot, minutes));
  return taken;
}

/**
 * Takes more of a program's hours, or gives some back.
 *
 * @param taken - What is taken; changed. [min]
 * @param slot - The program's slot. [–]
 * @param minutes - Minutes on one of its days; below zero gives back. [min]
 * @returns Nothing. [–]
 */
export function take(taken: HoursTaken, slot: number, minutes: number): void {
  const { minutes: of, masks, loads } = taken;
  of[slot] = (of[slot] as number) + minutes;
  for (let day = 0; day < WEEK; day += 1) if (((masks[slot] as number) >> day) & 1) loads[day] = (loads[day] as number) + minutes;
}

/**
 * By how much programs and weekdays are too long.
 *
 * @param taken - What is taken now. [min]
 * @returns Sum of all excess; 0 where everything fits. [min]
 */
export function excessNow(taken: HoursTaken): number {
  const { perDay, minutes, limits, loads } = taken;
  let excess = 0;
  for (let slot = 0; slot < minutes.length; slot += 1) excess += Math.max(0, (minutes[slot] as number) - (limits[slot] as number));
  for (let day = 0; day < WEEK; day += 1) excess += Math.max(0, (loads[day] as number) - perDay);
  return excess > DUST ? excess : 0;
}
