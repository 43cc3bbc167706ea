import type { DayPattern } from '../days/day-pattern.js';

const WEEK = 7;
/** Turns of the days of all programs that are looked at; four programs of seven turns are 2,401. */
const MOST_TURNS = 2500;

/** One way to turn the days of programs through the week: which of them then run on one day, as bits of their slots. */
export interface Meeting {
  readonly patterns: readonly (DayPattern | null)[];
  readonly together: readonly number[];
}

/**
 * Every way that programs can meet on the days of a week, of all turns of their days: those only where nothing can meet less.
 *
 * @param turns - Patterns that each program may be given; none for an unused one. [d]
 * @returns The ways, or null where there are too many turns to look at. [–]
 */
export function meetings(turns: readonly (readonly DayPattern[])[]): readonly Meeting[] | null {
  const total = turns.reduce((product, { length }) => product * Math.max(1, length), 1);
  if (total > MOST_TURNS) return null;
  const found = new Map<string, Meeting>();
  for (let turn = 0; turn < total; turn += 1) {
    let rest = turn;
    const patterns = turns.map((of) => {
      if (!of.length) return null;
      const at = rest % of.length;
      rest = Math.floor(rest / of.length);
      return of[at] ?? null;
    });
    const together = largestSets(patterns);
    const key = together.join();
    if (!found.has(key)) found.set(key, { patterns, together });
  }
  const all = [...found.values()];
  return all.filter((one) => !all.some((other) => other !== one && isWeaker(other.together, one.together)));
}

function largestSets(patterns: readonly (DayPattern | null)[]): readonly number[] {
  const sets = new Set<number>();
  for (let day = 0; day < WEEK; day += 1) {
    sets.add(patterns.reduce((set, pattern, slot) => set | ((((pattern?.mask ?? 0) >> day) & 1) << slot), 0));
  }
  const all = [...sets].filter((set) => set !== 0);
  return all.filter((set) => !all.some((other) => other !== set && (set & ~other) === 0)).sort((a, b) => a - b);
}

// Whatever meets in the one meets in the other too.
function isWeaker(one: readonly number[], other: readonly number[]): boolean {
  return one.every((set) => other.some((of) => (set & ~of) === 0));
}
