import { type ChoiceProblem, chooseOptions } from './choose-options.kernel.js';

/** A whole choice: an option by slot (-1: unused), and its cost. */
interface RankedLeaf {
  readonly options: readonly number[];
  readonly cost: number;
}

/** Whole choices, the cheapest first; a bound of all others below what is of interest; and how many partial choices were looked at. */
export interface RankedLeaves {
  readonly leaves: readonly RankedLeaf[];
  readonly leftOut: number;
  readonly nodes: number;
}

/**
 * The cheapest whole choices in their order, so that what is looked at closely is what promises most, and the first one that is not looked at
 * bounds all that follow.
 *
 * @param problem - Costs. [–]
 * @param interest - The cost from which on nothing is of interest. [–]
 * @param most - How many are kept. [–]
 * @param mostNodes - Partial choices looked at before the search gives up. [–]
 * @returns The choices. [–]
 */
export function cheapestLeaves(problem: ChoiceProblem, interest: number, most: number, mostNodes: number): RankedLeaves {
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
  const { leftOut, nodes } = chooseOptions(problem, interest, { visit }, mostNodes);
  keepBest();
  return { leaves: kept, leftOut: Math.min(leftOut, dropped), nodes };
}
