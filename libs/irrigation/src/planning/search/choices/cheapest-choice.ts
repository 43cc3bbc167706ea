import { type ChoiceProblem, chooseOptions, type LookedThrough, type MostLooks } from './choose-options.kernel.js';

/** A choice of an option for each slot (-1: unused) and what it costs. */
export interface PricedChoice {
  readonly options: readonly number[];
  readonly cost: number;
}

/** The cheapest choice, a bound of all that were left out, and what was looked at. */
type CheapestChoice = PricedChoice & LookedThrough;

/**
 * The cheapest of all choices. An option that costs every zone as much as another of its slot or more is left out: the other can stand for it.
 *
 * @param problem - Costs. [–]
 * @param known - A choice that is to be bettered: nothing dearer is looked at. [–]
 * @param most - What is looked at before the search gives up. [–]
 * @returns The cheapest found: the known one where there is none cheaper. [–]
 */
export function cheapestChoice(problem: ChoiceProblem, known: PricedChoice, most: MostLooks): CheapestChoice {
  const { fewer, kept, work } = withoutDearer(problem);
  let best = known;
  const visit = (options: readonly number[], cost: number) => {
    best = { options: options.map((option, slot) => (option < 0 ? option : (kept[slot]?.[option] as number))), cost };
    return cost;
  };
  const looked = chooseOptions(fewer, known.cost, { visit }, most);
  return { ...looked, ...best, work: looked.work + work };
}

interface Fewer {
  readonly fewer: ChoiceProblem;
  /** Place in the whole problem of each option that is left, by slot. */
  readonly kept: readonly (readonly number[])[];
  readonly work: number;
}

function withoutDearer(problem: ChoiceProblem): Fewer {
  const { zones, costs, fixed } = problem;
  const known = new Map<Float64Array, { readonly kept: readonly number[]; readonly costs: Float64Array }>();
  let work = 0;
  const ofSlots = costs.map((of, slot) => {
    const before = known.get(of);
    if (before) return before;
    const ofFixed = fixed[slot] as Float64Array;
    const kept: number[] = [];
    for (let option = 0; option < ofFixed.length; option += 1) {
      work += ofFixed.length;
      if (!isDearer(of, ofFixed, zones, option)) kept.push(option);
    }
    const made = { kept, costs: new Float64Array(kept.length * zones) };
    kept.forEach((option, at) => made.costs.set(of.subarray(option * zones, (option + 1) * zones), at * zones));
    known.set(of, made);
    return made;
  });
  return {
    fewer: {
      ...problem,
      costs: ofSlots.map((of) => of.costs),
      fixed: ofSlots.map(({ kept }, slot) => Float64Array.from(kept, (option) => fixed[slot]?.[option] as number)),
    },
    kept: ofSlots.map(({ kept }) => kept),
    work,
  };
}

// Of options that cost the same the first stays.
function isDearer(costs: Float64Array, fixed: Float64Array, zones: number, option: number): boolean {
  for (let other = 0; other < fixed.length; other += 1) {
    if (other === option || (fixed[other] as number) > (fixed[option] as number)) continue;
    let [zone, isCheaper] = [0, (fixed[other] as number) < (fixed[option] as number)];
    for (; zone < zones; zone += 1) {
      const [here, there] = [costs[option * zones + zone] as number, costs[other * zones + zone] as number];
      if (there > here) break;
      isCheaper ||= there < here;
    }
    if (zone === zones && (isCheaper || other < option)) return true;
  }
  return false;
}
