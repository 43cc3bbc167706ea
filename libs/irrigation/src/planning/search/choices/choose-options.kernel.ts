/**
 * The choice of an option for each slot as numbers: `costs[slot][option * zones + zone]` is what a zone costs there (infinite: not allowed),
 * `fixed[slot][option]` what the option itself costs, `dry[zone]` what a zone costs that no program waters. Slots with one `sameAs` number are
 * alike.
 */
export interface ChoiceProblem {
  readonly zones: number;
  readonly costs: readonly Float64Array[];
  readonly fixed: readonly Float64Array[];
  readonly dry: Float64Array;
  readonly sameAs: readonly number[];
}

/** Looks at a whole choice that may be the cheapest: an option by slot (-1: unused) and its cost. */
export interface LeafVisitor {
  /** Tells the cost above which nothing is of interest from now on; null breaks the search off. [–] */
  readonly visit: (options: readonly number[], cost: number) => number | null;
}

/** What a search may look at: partial choices, and steps of work to reckon them. */
export interface MostLooks {
  readonly nodes: number;
  readonly work: number;
}

/** What a search left out, as a bound, and what it looked at. */
export interface LookedThrough extends MostLooks {
  readonly leftOut: number;
}

const DUST = 1e-9;

/**
 * Visits the choices of options for all slots that can be cheapest, each zone going to the slot where it costs least: branch and bound, slot by
 * slot.
 *
 * A partial choice costs at least what its options cost and, for every zone, the least of what is chosen and of all that may follow.
 *
 * @param problem - Costs. [–]
 * @param interest - The cost from which on nothing is of interest. [–]
 * @param leaves - Is shown each whole choice that costs less, and tells what is of interest from then on. [–]
 * @param most - What is looked at before the search gives up. [–]
 * @returns A bound of all that was left out when the search gave up, infinite where it came to its end; and what was looked at. [–]
 */
export function chooseOptions(problem: ChoiceProblem, interest: number, leaves: LeafVisitor, most: MostLooks): LookedThrough {
  const { zones, costs, fixed, dry, sameAs } = problem;
  const slots = costs.length;
  // What any later slot can do for a zone.
  const later: Float64Array[] = [new Float64Array(zones).fill(Number.POSITIVE_INFINITY)];
  for (let slot = slots - 1; slot >= 0; slot -= 1) {
    const least = Float64Array.from(later[0] as Float64Array);
    const of = costs[slot] as Float64Array;
    for (let at = 0; at < of.length; at += 1) {
      const zone = at % zones;
      if ((of[at] as number) < (least[zone] as number)) least[zone] = of[at] as number;
    }
    later.unshift(least);
  }
  let best = interest;
  let leftOut = Number.POSITIVE_INFINITY;
  let [nodes, work] = [0, slots * zones];
  let isBrokenOff = false;
  const chosen = new Array<number>(slots).fill(-1);
  const current = Array.from({ length: slots + 1 }, () => new Float64Array(zones));
  const within = Array.from({ length: slots }, () => new Float64Array(zones));
  const reaches = fixed.map(({ length }) => new Float64Array(length + 1));
  // Bounds of the options that are asked for again in the next slot, where that is alike: there they cannot be less.
  const floors = fixed.map(({ length }) => new Float64Array(length + 1));
  const opens = fixed.map(({ length }) => new Int32Array(length + 1));
  (current[0] as Float64Array).set(dry);

  // Writes the options of a slot that may still be cheapest, in their order, with their bounds; tells how many there are.
  const openOptions = (slot: number, paid: number): number => {
    const of = costs[slot] as Float64Array;
    const ofFixed = fixed[slot] as Float64Array;
    // Slots that are alike take their options in order; an unused one is followed by unused ones.
    const isAlike = slot > 0 && sameAs[slot] === sameAs[slot - 1];
    const from = isAlike ? (chosen[slot - 1] as number) : -1;
    const floor = floors[slot] as Float64Array;
    const before = isAlike ? (floors[slot - 1] as Float64Array) : null;
    // The least of what is chosen and of all that may follow.
    const [here, after, reached] = [current[slot] as Float64Array, later[slot + 1] as Float64Array, within[slot] as Float64Array];
    for (let zone = 0; zone < zones; zone += 1) reached[zone] = Math.min(here[zone] as number, after[zone] as number);
    let left = 0;
    for (let option = -1; option < ofFixed.length; option += 1) {
      floor[option + 1] = Number.POSITIVE_INFINITY;
      if (isAlike && option >= 0 && (from < 0 || option < from)) continue;
      if (before && (before[option + 1] as number) >= best) continue;
      let bound = paid + fixedOf(ofFixed, option);
      const base = option * zones;
      let zone = 0;
      for (; zone < zones && bound < best; zone += 1) {
        const least = reached[zone] as number;
        const there = option < 0 ? least : (of[base + zone] as number);
        bound += there < least ? there : least;
      }
      work += zone;
      floor[option + 1] = bound;
      if (bound >= best) continue;
      (reaches[slot] as Float64Array)[left] = bound;
      (opens[slot] as Int32Array)[left] = option;
      left += 1;
    }
    return left;
  };
  const visit = (slot: number, paid: number): void => {
    const here = current[slot] as Float64Array;
    if (slot === slots) {
      let cost = paid;
      for (let zone = 0; zone < zones; zone += 1) cost += here[zone] as number;
      if (cost >= best - DUST) return;
      const from = leaves.visit(chosen, cost);
      if (from === null) isBrokenOff = true;
      else best = from;
      return;
    }
    const of = costs[slot] as Float64Array;
    const [reach, open] = [reaches[slot] as Float64Array, opens[slot] as Int32Array];
    let left = openOptions(slot, paid);
    const then = current[slot + 1] as Float64Array;
    for (;;) {
      let [next, bound] = [-1, best - DUST];
      for (let at = 0; at < left; at += 1) if ((reach[at] as number) < bound) [next, bound] = [at, reach[at] as number];
      if (next < 0) break;
      const option = open[next] as number;
      work += left;
      left -= 1;
      reach.copyWithin(next, next + 1, left + 1);
      open.copyWithin(next, next + 1, left + 1);
      if (isBrokenOff || nodes >= most.nodes || work >= most.work) {
        leftOut = Math.min(leftOut, bound);
        break;
      }
      nodes += 1;
      chosen[slot] = option;
      const base = option * zones;
      then.set(here);
      const ofOption = option < 0 ? 0 : zones;
      for (let zone = 0; zone < ofOption; zone += 1) then[zone] = Math.min(here[zone] as number, of[base + zone] as number);
      work += zones;
      visit(slot + 1, paid + fixedOf(fixed[slot] as Float64Array, option));
      chosen[slot] = -1;
    }
  };
  visit(0, 0);
  return { leftOut, nodes, work };
}

function fixedOf(fixed: Float64Array, option: number): number {
  return option < 0 ? 0 : (fixed[option] as number);
}
