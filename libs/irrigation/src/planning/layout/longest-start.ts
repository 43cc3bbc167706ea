import type { OpenHours } from './water-window.js';

/**
 * Longest start that the hours hold some times over on each day of a program. A timer sets days once for all starts of a program: where it does not
 * run daily, all of them begin on one date.
 *
 * @param hours - The hours. [min]
 * @param starts - How many times, three at most. [–]
 * @param isDaily - Whether the program runs on every day. [–]
 * @returns Minutes of each. [min]
 */
export function longestStart(hours: OpenHours, starts: number, isDaily: boolean): number {
  const { longest, longestOfDate } = hours;
  return (starts > 1 && !isDaily ? longestOfDate : longest)[starts - 1] ?? 0;
}
