import type { DayPattern } from '../days/day-pattern.js';
import { type Assignment, excessOf, type Ground, minutesOfSlots } from '../pricing/assignment.js';

/** Turns of the days of all programs that are tried; four programs of seven turns are 2,401. */
const MOST_TURNS = 2500;

/**
 * Chooses, of patterns that water alike, the weekdays that load the week most evenly.
 *
 * @param ground - Limits of a day and a program. [min]
 * @param assignment - The assignment. [–]
 * @returns The same with days of the least excess. [–]
 */
export function turnDays(ground: Ground, assignment: Assignment): Assignment {
  const minutes = minutesOfSlots(ground, assignment);
  const turns = assignment.options.map((option, slot): readonly (DayPattern | null)[] =>
    option && (minutes[slot] as number) > 0 ? option.days.patterns : [null],
  );
  const { options } = assignment;
  let best = turns.map((of) => of[0] ?? null);
  let least = excessOf(ground, { options, patterns: best }, minutes);
  const total = turns.reduce((product, of) => product * of.length, 1);
  for (let turn = 1; turn < Math.min(total, MOST_TURNS) && least > 0; turn += 1) {
    let rest = turn;
    const patterns = turns.map((of) => {
      const at = rest % of.length;
      rest = Math.floor(rest / of.length);
      return of[at] ?? null;
    });
    const excess = excessOf(ground, { options, patterns }, minutes);
    if (excess < least) [best, least] = [patterns, excess];
  }
  return { ...assignment, patterns: best };
}
