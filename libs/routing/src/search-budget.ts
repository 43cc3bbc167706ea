/**
 * How much of a search's budget is spent after so many rounds: from 0, done at 1. The caller brings it, because a library has no clock; one
 * that counts rounds gives the same answer every time, one that reads a clock ends on time.
 */
export type SearchBudget = (rounds: number) => number;

/**
 * A budget of rounds, which makes a search repeatable.
 *
 * @param most - How many rounds. [–]
 * @returns The budget. [–]
 */
export function budgetOfRounds(most: number): SearchBudget {
  return (rounds) => (most > 0 ? Math.min(1, rounds / most) : 1);
}
