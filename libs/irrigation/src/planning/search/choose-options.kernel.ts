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

/** What a search left out, as a bound, and how many partial choices it looked at. */
export interface LookedThrough {
  readonly leftOut: number;
  readonly nodes: number;
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
 * @param mostNodes - Partial choices looked at before the search gives up. [–]
 * @returns A bound of all that was left out when the search gave up, infinite where it came to its end; and what was looked at. [–]
 */
export function chooseOptions(problem: ChoiceProblem, interest: number, leaves: LeafVisitor, mostNodes: number): LookedThrough {
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
  let nodes = 0;
  let isBrokenOff = false;
  const chosen = new Array<number>(slots).fill(-1);
  const current = Array.from({ length: slots + 1 }, () => new Float64Array(zones));
  const within = Array.from({ length: slots }, () => new Float64Array(zones));
  const bounds = fixed.map(({ length }) => new Float64Array(length + 1));
  (current[0] as Float64Array).set(dry);

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
    const ofFixed = fixed[slot] as Float64Array;
    const after = later[slot + 1] as Float64Array;
    const count = ofFixed.length;
    // Slots that are alike take their options in order; an unused one is followed by unused ones.
    const isAlike = slot > 0 && sameAs[slot] === sameAs[slot - 1];
    const from = isAlike ? (chosen[slot - 1] as number) : -1;
    const reach = bounds[slot] as Float64Array;
    // The least of what is chosen and of all that may follow.
    const reached = within[slot] as Float64Array;
    for (let zone = 0; zone < zones; zone += 1) reached[zone] = Math.min(here[zone] as number, after[zone] as number);
    for (let option = -1; option < count; option += 1) {
      reach[option + 1] = Number.POSITIVE_INFINITY;
      if (isAlike && option >= 0 && (from < 0 || option < from)) continue;
      let bound = paid + fixedOf(ofFixed, option);
      const base = option * zones;
      for (let zone = 0; zone < zones && bound < best; zone += 1) {
        const least = reached[zone] as number;
        bound += option < 0 ? least : Math.min(least, of[base + zone] as number);
      }
      reach[option + 1] = bound;
    }
    const next = current[slot + 1] as Float64Array;
    for (;;) {
      let [option, bound] = [-2, best - DUST];
      for (let at = 0; at <= count; at += 1) if ((reach[at] as number) < bound) [option, bound] = [at - 1, reach[at] as number];
      if (option < -1) break;
      reach[option + 1] = Number.POSITIVE_INFINITY;
      if (isBrokenOff || nodes >= mostNodes) {
        leftOut = Math.min(leftOut, bound);
        break;
      }
      nodes += 1;
      chosen[slot] = option;
      const base = option * zones;
      next.set(here);
      const ofOption = option < 0 ? 0 : zones;
      for (let zone = 0; zone < ofOption; zone += 1) next[zone] = Math.min(here[zone] as number, of[base + zone] as number);
      visit(slot + 1, paid + fixedOf(ofFixed, option));
      chosen[slot] = -1;
    }
  };
  visit(0, 0);
  return { leftOut, nodes };
}

function fixedOf(fixed: Float64Array, option: number): number {
  return option < 0 ? 0 : (fixed[option] as number);
}
