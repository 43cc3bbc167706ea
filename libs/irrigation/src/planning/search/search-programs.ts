import { type Assignment, costOf, excessOf, type Ground, minutesOfSlots } from './assignment.js';
import { chooseOptions } from './choose-options.kernel.js';
import { choiceProblem, type MinutePrices, minutePrice } from './choice-problem.js';
import { EVERY_DAY, weekdayPattern } from '../days/day-pattern.js';
import { fitHours } from './fit-hours.js';
import { leafBound, type LeafChoice } from './leaf-bound.kernel.js';
import { leafProblem } from './leaf-problem.js';
import type { SlotOption } from './slots.js';
import { turnDays } from './turn-days.js';

const MOST_NODES = 20_000;
const MOST_LEAVES = 500;
const MOST_VISITS = 5000;
const EARLY_FITS = 4;
const MOST_FITS = 14;
const ROUNDS = 40;
/** What cannot better the best by more than this share is closed. [–] */
export const GOOD_GAP = 0.008;

/** The best programs found, their cost, and a bound below which no programs are. */
export interface Found {
  readonly assignment: Assignment;
  readonly cost: number;
  readonly bound: number;
}

/**
 * Chooses days, starts and percent of every program, and program and minutes of every zone.
 *
 * Without the hours this is exact (branch and bound). Where the choice does not fit into the hours, every choice of days that can still be the
 * best gets a bound that counts the hours (Lagrange), and the promising ones are made to fit.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param daysOpen - Weekdays on which any program may run. [d]
 * @param known - Cost of programs that are known already. [–]
 * @returns The best that fits, and the bound; null where nothing can better what is known by a share worth it. [–]
 */
export function searchPrograms(ground: Ground, daysOpen: number, known: number): Found | null {
  const free = freeChoice(ground);
  if (free.bound >= known * (1 - GOOD_GAP)) return null;
  const wished = turnDays(ground, free.assignment);
  if (excessOf(ground, wished.patterns, minutesOfSlots(ground, wished)) === 0) {
    return { assignment: wished, cost: costOf(ground, wished), bound: free.bound };
  }
  const fitted = fitHours(ground, wished);
  const first = { assignment: fitted, cost: costOf(ground, fitted), bound: free.bound };
  return withinHours(ground, daysOpen * ground.perDay, first, known);
}

function freeChoice(ground: Ground): Found {
  let best: readonly number[] = ground.slots.map(() => -1);
  let cost = Number.POSITIVE_INFINITY;
  const visit = (options: readonly number[], of: number) => {
    [best, cost] = [[...options], of];
    return of;
  };
  const leftOut = chooseOptions(choiceProblem(ground, { any: 0, bound: 0 }), Number.POSITIVE_INFINITY, { visit }, MOST_NODES);
  const leaf = leafOf(ground, best);
  const taken = emptyChoice(ground);
  leafBound(
    { ...leafProblem(ground, leaf), limits: new Float64Array(0), weights: new Float64Array(0) },
    cost,
    Number.NEGATIVE_INFINITY,
    1,
    taken,
  );
  return { assignment: assigned(leaf, taken), cost, bound: Math.min(cost, leftOut) };
}

interface OpenLeaf {
  readonly options: readonly (SlotOption | null)[];
  readonly taken: LeafChoice;
  readonly bound: number;
}

function withinHours(ground: Ground, weekly: number, first: Found, known: number): Found {
  const prices = weekPrices(ground, weekly, first);
  const worth = prices.any * weekly + prices.bound * boundMinutes(ground);
  const open: OpenLeaf[] = [];
  let best: Omit<Found, 'bound'> = first;
  const least = () => Math.min(best.cost, known);
  // Costs at these prices are more than they really are by what all minutes of the week are worth.
  const interest = () => least() * (1 - GOOD_GAP) + worth;
  const fit = ({ options, taken }: OpenLeaf) => {
    const fitted = fitHours(ground, assigned(options, taken));
    const cost = costOf(ground, fitted);
    if (cost < best.cost) best = { assignment: fitted, cost };
  };
  const visit = (chosen: readonly number[], cost: number) => {
    const leaf = open.length < MOST_LEAVES ? openLeaf(ground, leafOf(ground, chosen), least()) : null;
    open.push(
      leaf ? { ...leaf, bound: Math.max(leaf.bound, cost - worth) } : { options: [], taken: emptyChoice(ground), bound: cost - worth },
    );
    if (open.length <= EARLY_FITS && leaf) fit(leaf);
    return open.length > MOST_VISITS ? Number.NEGATIVE_INFINITY : interest();
  };
  const leftOut = chooseOptions(choiceProblem(ground, prices), interest(), { visit }, MOST_NODES) - worth;
  const promising = open
    .filter(({ options, bound }) => options.length > 0 && bound < least() * (1 - GOOD_GAP))
    .sort((a, b) => a.bound - b.bound);
  for (const leaf of promising.slice(0, MOST_FITS)) fit(leaf);
  // Broken off, nothing is known of what was not visited but the bound without the hours.
  if (open.length > MOST_VISITS) return { ...best, bound: first.bound };
  const ofLeaves = open.reduce((lowest, { bound }) => Math.min(lowest, bound), Number.POSITIVE_INFINITY);
  return { ...best, bound: Math.max(first.bound, Math.min(ofLeaves, leftOut, least() * (1 - GOOD_GAP))) };
}

function openLeaf(ground: Ground, options: readonly (SlotOption | null)[], known: number): OpenLeaf {
  const presses = ground.frame.weights.keyPress * options.reduce((sum, option) => sum + (option?.presses ?? 0), 0);
  const taken = emptyChoice(ground);
  const bound = leafBound(leafProblem(ground, options), known - presses, known * (1 - GOOD_GAP) - presses, ROUNDS, taken);
  return { options, taken, bound: presses + bound };
}

// The prices at which the first choice just fills the days of ruled zones, and then the week: what all choices are compared at.
function weekPrices(ground: Ground, weekly: number, { assignment }: Found): MinutePrices {
  const bound =
    ground.week === EVERY_DAY
      ? 0
      : priceThatFills(ground, (price) => minutesAt(ground, assignment, { any: 0, bound: price }).bound, boundMinutes(ground));
  return { any: priceThatFills(ground, (price) => minutesAt(ground, assignment, { any: price, bound }).any, weekly), bound };
}

function priceThatFills(ground: Ground, minutesAtPrice: (price: number) => number, most: number): number {
  if (minutesAtPrice(0) <= most) return 0;
  let [low, high] = [0, (8 * ground.frame.weights.thirst * ground.frame.days * largestFlow(ground)) / 7];
  for (let round = 0; round < 18; round += 1) {
    const middle = (low + high) / 2;
    if (minutesAtPrice(middle) > most) low = middle;
    else high = middle;
  }
  return high;
}

function boundMinutes({ week, perDay }: Ground): number {
  return weekdayPattern(week).perWeek * perDay;
}

// Minutes of a week that the first choice takes at some prices: of all programs, and of those bound to the weekdays that rules leave.
function minutesAt(ground: Ground, { options }: Assignment, prices: MinutePrices): MinutePrices {
  const priced = options.map((option) => (option ? minutePrice(option, ground.week, prices) : 0));
  const isBound = options.map((option) => option !== null && minutePrice(option, ground.week, { any: 0, bound: 1 }) > 0);
  let [any, bound] = [0, 0];
  ground.zones.forEach((_, zone) => {
    let [least, minutes, where] = [ground.dry[zone] as number, 0, -1];
    options.forEach((option, slot) => {
      const choices = option?.zones[zone];
      choices?.steps.forEach((steps, at) => {
        const weekly = choices.minutesPerStep * steps;
        const cost = (choices.prices[at] as number) + (priced[slot] as number) * weekly;
        if (cost < least) [least, minutes, where] = [cost, weekly, slot];
      });
    });
    any += minutes;
    if (isBound[where]) bound += minutes;
  });
  return { any, bound };
}

function largestFlow({ zones }: Ground): number {
  return zones.reduce((most, { zone }) => Math.max(most, zone.flowLPerMin), 0);
}

function leafOf(ground: Ground, options: readonly number[]): readonly (SlotOption | null)[] {
  return ground.slots.map((slot, at) => slot.options[options[at] ?? -1] ?? null);
}

function emptyChoice({ zones }: Ground): LeafChoice {
  return { program: new Int32Array(zones.length), steps: new Int32Array(zones.length) };
}

function assigned(options: readonly (SlotOption | null)[], { program, steps }: LeafChoice): Assignment {
  return { options, patterns: options.map((option) => option?.days.patterns[0] ?? null), slotOf: [...program], steps: [...steps] };
}
