import type { Assignment, Ground } from '../pricing/assignment.js';
import { leafOf } from '../leaf/leaf-choice.js';
import { choiceProblem, type MinutePrices } from './choices/choice-problem.js';
import { cheapestChoice } from './choices/cheapest-choice.js';
import type { ChoiceProblem } from './choices/choose-options.kernel.js';
import { type EffortLeft, spend } from './effort.js';
import { boundMinutes, minutesAt, weekPrices } from './week-prices.js';

/** Halvings of each price. */
const HALVINGS = 5;
/** Steps of work that writing the price of one zone in one option counts as. */
const STEPS_TO_WRITE = 10;
/** Partial choices looked at for the best at one pair of prices. */
const MOST_NODES = 4_000;
/** Of the work that is left the share of one pair of prices. [–] */
const SHARE_OF_PRICES = 0.2;

/** Prices of the week's minutes, what all minutes of the week are worth at them, and a bound below which no choice that fits is. */
interface SettledPrices {
  readonly prices: MinutePrices;
  readonly worth: number;
  readonly bound: number;
}

/**
 * Prices of the week's minutes at which the cheapest of all choices of days tells most: where it takes more minutes than the week has they are
 * raised, where it takes fewer they are lowered.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param weekly - Minutes of a week in which anything may run. [min]
 * @param first - A choice to begin with. [–]
 * @param effort - What may be looked at; changed to what is left. [–]
 * @returns The prices with the highest bound of those tried. [–]
 */
export function settledPrices(ground: Ground, weekly: number, first: Assignment, effort: EffortLeft): SettledPrices {
  const held = { any: weekly, bound: boundMinutes(ground) };
  let chosen: readonly number[] | null = null;
  const settled = (prices: MinutePrices): SettledPrices & { readonly minutes: MinutePrices } => {
    const problem = choiceProblem(ground, prices);
    effort.work -= STEPS_TO_WRITE * ground.zones.length * ground.slots.reduce((sum, { options }) => sum + options.length, 0);
    const found = cheapest(problem, chosen, effort);
    chosen = found.options;
    const worth = prices.any * held.any + prices.bound * held.bound;
    return { prices, worth, bound: found.bound - worth, minutes: minutesAt(ground, { options: leafOf(ground, found.options) }, prices) };
  };
  let best = settled(weekPrices(ground, weekly, first));
  for (const which of ['bound', 'any'] as const) {
    let [low, high] = [0, best.prices[which]];
    for (let round = 0; round < HALVINGS && high > 0 && effort.nodes > 0 && effort.work > 0; round += 1) {
      const middle = (low + high) / 2;
      const next = settled({ ...best.prices, [which]: middle });
      if (next.minutes[which] > held[which]) low = middle;
      else high = middle;
      if (next.bound > best.bound) best = next;
    }
  }
  return best;
}

// The cheapest choice and its bound; a choice that is known bounds what is looked at.
function cheapest(problem: ChoiceProblem, known: readonly number[] | null, effort: EffortLeft) {
  const before = known
    ? { options: known, cost: costAt(problem, known) }
    : { options: problem.costs.map(() => -1), cost: Number.POSITIVE_INFINITY };
  const found = cheapestChoice(problem, before, {
    nodes: Math.min(MOST_NODES, effort.nodes),
    work: effort.work * SHARE_OF_PRICES,
  });
  spend(effort, found);
  return { options: found.options, bound: Math.min(found.cost, found.leftOut) };
}

function costAt({ zones, costs, fixed, dry }: ChoiceProblem, options: readonly number[]): number {
  let cost = options.reduce((sum, option, slot) => sum + (option < 0 ? 0 : (fixed[slot]?.[option] ?? 0)), 0);
  for (let zone = 0; zone < zones; zone += 1) {
    let least = dry[zone] as number;
    options.forEach((option, slot) => {
      if (option >= 0) least = Math.min(least, costs[slot]?.[option * zones + zone] ?? Number.POSITIVE_INFINITY);
    });
    cost += least;
  }
  return cost;
}
