import { type ChoiceProblem, chooseOptions, type LookedThrough, type MostLooks } from './choose-options.kernel.js';

/** A whole choice: an option by slot (-1: unused), and its cost. */
interface RankedLeaf {
  readonly options: readonly number[];
  readonly cost: number;
}

/** Whole choices, the cheapest first; a bound of all others below what is of interest; and what was looked at. */
export interface RankedLeaves extends LookedThrough {
  readonly leaves: readonly RankedLeaf[];
}

/**
 * The cheapest whole choices in their order, so that what is looked at closely is what promises most, and the first one that is not looked at
 * bounds all that follow.
 *
 * @param problem - Costs. [–]
 * @param interest - The cost from which on nothing is of interest. [–]
 * @param most - How many are kept. [–]
 * @param looks - What is looked at before the search gives up. [–]
 * @returns The choices. [–]
 */
export function cheapestLeaves(problem: ChoiceProblem, interest: number, most: number, looks: MostLooks): RankedLeaves {
  let kept: RankedLeaf[] = [];
  let cutoff = interest;
  let dropped = Number.POSITIVE_INFINITY;
  const keepBest = () => {
    kept.sort((a, b) => a.cost - b.cost);
    const next = kept[most];
    if (!next) return;
    // What is as dear as the first one dropped is not looked for any more.
    [cutoff, dropped] = [next.cost, next.cost];
    kept = kept.slice(0, most);
  };
  const visit = (options: readonly number[], cost: number) => {
    kept.push({ options: [...options], cost });
    if (kept.length >= 2 * most) keepBest();
    return cutoff;
  };
  const looked = chooseOptions(problem, interest, { visit }, looks);
  keepBest();
  return { ...looked, leaves: kept, leftOut: Math.min(looked.leftOut, dropped) };
}
