import { type Assignment, costOf, type Ground } from '../pricing/assignment.js';
import type { SlotOption } from '../pricing/slots.js';
import { closeLeaf } from '../leaf/close-leaf.js';
import { assigned, emptyChoice, leafOf } from '../leaf/leaf-choice.js';
import { leafBound, type LeafChoice } from '../leaf/leaf-bound.kernel.js';
import { leafProblem, runsOf } from '../leaf/leaf-problem.js';
import { choiceProblem } from './choices/choice-problem.js';
import { type ChoiceProblem, chooseOptions } from './choices/choose-options.kernel.js';
import { cheapestLeaves } from './choices/cheapest-leaves.js';
import { type EffortLeft, spend, visitsOf } from './effort.js';
import { fitHours } from './fit-hours.js';
import { settledPrices } from './settled-prices.js';

/** Of all choices of days that may be looked at the share that is left for the others in their order. [–] */
const SHARE_IN_ORDER = 0.75;
const EARLY_FITS = 4;
const MOST_FITS = 14;
const MOST_NEAR = 8;
const ROUNDS = 40;
/** Times that the best choice of days is changed by one program, how many of these are made to fit each time, and prices tried for each. */
const MOST_STEPS = 8;
const NEAR_FITS = 3;
const NEAR_ROUNDS = 10;
/** A leaf is looked through with at most this share of all that may be looked at. [–] */
const SHARE_OF_LEAF = 0.1;

/** The best programs, others that came near (the cheapest first), their cost, and a bound below which no programs are. */
export interface Fitted {
  readonly assignment: Assignment;
  readonly others: readonly Assignment[];
  readonly cost: number;
  readonly bound: number;
}

/** What is sought: what betters the known. */
export interface Sought {
  /** Cost of programs that are known already. [–] */
  readonly known: number;
  /** The share by which it is to be bettered. [–] */
  readonly gap: number;
  /** Minutes of a week in which anything may run. [min] */
  readonly weekly: number;
  /** What it may look at; changed to what is left. */
  readonly effort: EffortLeft;
}

interface OpenLeaf {
  readonly options: readonly (SlotOption | null)[];
  readonly taken: LeafChoice;
  readonly bound: number;
}

interface Costed {
  readonly assignment: Assignment;
  readonly cost: number;
}

/** Where the search stands: leaves that may hold something better, and the lowest bound of all that were closed without being looked through. */
interface Stand {
  readonly ground: Ground;
  readonly sought: Sought;
  best: Costed;
  near: Costed[];
  open: OpenLeaf[];
}

/**
 * The best choice that fits into the hours: every choice of days that can still be the best gets a bound that counts the hours (Lagrange);
 * the promising ones are made to fit, and then looked through.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param first - What is known to fit, and the bound without the hours. [–]
 * @param sought - What else is known, and what is worth finding. [–]
 * @returns The best that fits, and the bound. [–]
 */
export function withinHours(ground: Ground, first: Fitted, sought: Sought): Fitted {
  const stand: Stand = { ground, sought, best: first, near: [first], open: [] };
  const settled = settledPrices(ground, sought.weekly, first.assignment, sought.effort);
  const leftOut = openLeaves(stand, choiceProblem(ground, settled.prices), settled.worth);
  const ofLeaves = closeAll(stand);
  const least = Math.max(first.bound, settled.bound, Math.min(ofLeaves, leftOut));
  const bound = Math.min(least, Math.max(good(stand), first.bound));
  const { assignment, cost } = stand.best;
  return { assignment, cost, bound, others: nearOf(stand) };
}

/**
 * The best choice of days changed by one program (other days, starts or percent, one program less or one more), again and again while that is
 * better: what many choices stand before in the order of their cost at the week's prices is found from the best of them.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param first - The best until now. [–]
 * @param sought - What else is known, and how many choices may be looked at. [–]
 * @returns The best then; the bound stays. [–]
 */
export function lookAround(ground: Ground, first: Fitted, sought: Sought): Fitted {
  const near = first.others.map((assignment) => ({ assignment, cost: costOf(ground, assignment) }));
  const stand: Stand = { ground, sought, best: first, near, open: [] };
  const seen = new Set<string>();
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { cost } = stand.best;
    stand.open = [];
    openAround(stand, seen);
    stand.open.sort((a, b) => a.bound - b.bound);
    for (const leaf of stand.open.slice(0, NEAR_FITS)) fit(stand, leaf);
    if (stand.best.cost >= cost || sought.effort.work <= 0) break;
  }
  return { assignment: stand.best.assignment, cost: stand.best.cost, bound: first.bound, others: nearOf(stand) };
}

function openAround(stand: Stand, seen: Set<string>): void {
  const { ground, best, sought } = stand;
  const now = best.assignment.options;
  const placeOf = (option: SlotOption | null, slot: number) => (option ? (ground.slots[slot]?.options.indexOf(option) ?? -1) : -1);
  ground.slots.forEach((slot, at) => {
    for (const option of [null, ...slot.options]) {
      const options = now.map((each, other) => (other === at ? option : each));
      const key = options.map(placeOf).join();
      if (seen.has(key) || sought.effort.visits <= 0 || sought.effort.work <= 0) continue;
      seen.add(key);
      sought.effort.visits -= (bounded(stand, options, Number.NEGATIVE_INFINITY, NEAR_ROUNDS) * NEAR_ROUNDS) / ROUNDS;
    }
  });
}

// Choices of days as they come, which narrows what is of interest; where they are many, the others in the order of what they cost at the week's
// prices. Costs at these prices are more than they really are by what all minutes of the week are worth. Tells a bound of what was not opened.
function openLeaves(stand: Stand, problem: ChoiceProblem, worth: number): number {
  const { ground, sought } = stand;
  const { effort } = sought;
  const opened = new Set<string>();
  const interest = () => good(stand) + worth;
  const openOnce = (options: readonly number[], cost: number) => {
    const key = options.join();
    if (!opened.has(key)) effort.visits -= open(stand, leafOf(ground, options), cost - worth);
    opened.add(key);
  };
  const [inOrder, workInOrder] = [effort.visits * SHARE_IN_ORDER, effort.work * SHARE_IN_ORDER];
  const visit = (options: readonly number[], cost: number) => {
    openOnce(options, cost);
    return effort.visits > inOrder && effort.work > workInOrder ? interest() : null;
  };
  const most = { nodes: effort.visits > 0 ? effort.nodes : 0, work: effort.work * SHARE_IN_ORDER };
  const passed = chooseOptions(problem, interest(), { visit }, most);
  spend(effort, passed);
  if (passed.leftOut >= interest() || isSpent(effort)) return passed.leftOut - worth;
  const kept = Math.ceil(effort.visits) + opened.size;
  const ranked = cheapestLeaves(problem, interest(), kept, { nodes: effort.nodes, work: effort.work * SHARE_IN_ORDER });
  spend(effort, ranked);
  let leftOut = ranked.leftOut;
  for (const { options, cost } of ranked.leaves) {
    if (cost < interest() && effort.visits > 0 && effort.work > 0) openOnce(options, cost);
    else leftOut = Math.min(leftOut, cost);
  }
  return leftOut - worth;
}

// Of those found on the way, each with other days, the cheapest.
function nearOf({ near, best }: Stand): readonly Assignment[] {
  return near
    .filter(({ assignment }) => assignment !== best.assignment)
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_NEAR)
    .map(({ assignment }) => assignment);
}

function isSpent({ nodes, visits, work }: EffortLeft): boolean {
  return nodes <= 0 || visits <= 0 || work <= 0;
}

// What is of interest: below the best by a share worth it.
function good({ best, sought }: Stand): number {
  return Math.min(best.cost, sought.known) * (1 - sought.gap);
}

function open(stand: Stand, options: readonly (SlotOption | null)[], atWeekPrices: number): number {
  const before = stand.open.length;
  const counted = bounded(stand, options, atWeekPrices, ROUNDS);
  const leaf = stand.open[before];
  if (leaf && stand.open.length <= EARLY_FITS) fit(stand, leaf);
  return counted;
}

// Opens what may hold something better; tells what the look counted.
function bounded(stand: Stand, options: readonly (SlotOption | null)[], atWeekPrices: number, rounds: number): number {
  const { ground } = stand;
  const presses = ground.frame.weights.keyPress * options.reduce((sum, option) => sum + (option?.presses ?? 0), 0);
  const { problem, prices } = leafProblem(ground, options);
  stand.sought.effort.work -= rounds * runsOf(problem);
  const taken = emptyChoice(ground, prices);
  const known = Math.min(stand.best.cost, stand.sought.known);
  const ofLeaf = presses + leafBound(problem, known - presses, good(stand) - presses, rounds, taken);
  const leaf = { options, taken, bound: Math.max(ofLeaf, atWeekPrices) };
  const counted = visitsOf(problem.weights.length, ground.zones.length);
  if (leaf.bound < good(stand)) stand.open.push(leaf);
  return counted;
}

function fit(stand: Stand, { options, taken }: OpenLeaf): void {
  const assignment = fitHours(stand.ground, assigned(options, taken), stand.sought.effort);
  const cost = costOf(stand.ground, assignment);
  stand.near.push({ assignment, cost });
  if (cost < stand.best.cost) stand.best = { assignment, cost };
}

function closeAll(stand: Stand): number {
  const promising = stand.open.sort((a, b) => a.bound - b.bound);
  for (const leaf of promising.slice(0, MOST_FITS)) if (stand.sought.effort.work > 0) fit(stand, leaf);
  let lowest = Number.POSITIVE_INFINITY;
  const { effort } = stand.sought;
  const mostOfLeaf = effort.looks * SHARE_OF_LEAF;
  for (const { options, bound } of promising) {
    if (bound >= good(stand)) break;
    const known = Math.min(stand.best.cost, stand.sought.known);
    const mostNodes = effort.work > 0 ? Math.min(mostOfLeaf, effort.looks) : 0;
    const closed = closeLeaf(stand.ground, options, { known, gap: stand.sought.gap, mostNodes, mostWork: effort.work });
    effort.looks -= closed.nodes;
    effort.work -= closed.work;
    if (closed.better) stand.near.push(closed.better);
    if (closed.better && closed.better.cost < stand.best.cost) stand.best = closed.better;
    lowest = Math.min(lowest, Math.max(bound, closed.bound));
  }
  return lowest;
}
