import { type Assignment, costOf, type Ground } from '../pricing/assignment.js';
import type { SlotOption } from '../pricing/slots.js';
import { closeLeaf } from '../leaf/close-leaf.js';
import { assigned, emptyChoice, leafOf } from '../leaf/leaf-choice.js';
import { leafBound, type LeafChoice } from '../leaf/leaf-bound.kernel.js';
import { leafProblem } from '../leaf/leaf-problem.js';
import { choiceProblem } from './choice-problem.js';
import { chooseOptions } from './choose-options.kernel.js';
import { type EffortLeft, visitsOf } from './effort.js';
import { fitHours } from './fit-hours.js';
import { boundMinutes, weekPrices } from './week-prices.js';

const EARLY_FITS = 4;
const MOST_FITS = 14;
const MOST_NEAR = 8;
const ROUNDS = 40;
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
  const prices = weekPrices(ground, sought.weekly, first.assignment);
  const worth = prices.any * sought.weekly + prices.bound * boundMinutes(ground);
  // Costs at these prices are more than they really are by what all minutes of the week are worth.
  const interest = () => good(stand) + worth;
  const { effort } = sought;
  const visit = (chosen: readonly number[], cost: number) => {
    effort.visits -= open(stand, leafOf(ground, chosen), cost - worth);
    return effort.visits > 0 ? interest() : null;
  };
  const { leftOut: dearer, nodes } = chooseOptions(
    choiceProblem(ground, prices),
    interest(),
    { visit },
    effort.visits > 0 ? effort.nodes : 0,
  );
  effort.nodes -= nodes;
  const leftOut = dearer - worth;
  const ofLeaves = closeAll(stand);
  const bound = Math.max(first.bound, Math.min(ofLeaves, leftOut, good(stand)));
  const { assignment, cost } = stand.best;
  return { assignment, cost, bound, others: nearOf(stand) };
}

// Of those found on the way, each with other days, the cheapest.
function nearOf({ near, best }: Stand): readonly Assignment[] {
  return near
    .filter(({ assignment }) => assignment !== best.assignment)
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_NEAR)
    .map(({ assignment }) => assignment);
}

// What is of interest: below the best by a share worth it.
function good({ best, sought }: Stand): number {
  return Math.min(best.cost, sought.known) * (1 - sought.gap);
}

// Tells what the look counted.
function open(stand: Stand, options: readonly (SlotOption | null)[], atWeekPrices: number): number {
  const { ground } = stand;
  const presses = ground.frame.weights.keyPress * options.reduce((sum, option) => sum + (option?.presses ?? 0), 0);
  const { problem, prices } = leafProblem(ground, options);
  const taken = emptyChoice(ground, prices);
  const known = Math.min(stand.best.cost, stand.sought.known);
  const ofLeaf = presses + leafBound(problem, known - presses, good(stand) - presses, ROUNDS, taken);
  const leaf = { options, taken, bound: Math.max(ofLeaf, atWeekPrices) };
  const counted = visitsOf(problem.weights.length);
  if (leaf.bound >= good(stand)) return counted;
  stand.open.push(leaf);
  if (stand.open.length <= EARLY_FITS) fit(stand, leaf);
  return counted;
}

function fit(stand: Stand, { options, taken }: OpenLeaf): void {
  const assignment = fitHours(stand.ground, assigned(options, taken));
  const cost = costOf(stand.ground, assignment);
  stand.near.push({ assignment, cost });
  if (cost < stand.best.cost) stand.best = { assignment, cost };
}

function closeAll(stand: Stand): number {
  const promising = stand.open.sort((a, b) => a.bound - b.bound);
  for (const leaf of promising.slice(0, MOST_FITS)) fit(stand, leaf);
  let lowest = Number.POSITIVE_INFINITY;
  const { effort } = stand.sought;
  const mostOfLeaf = effort.looks * SHARE_OF_LEAF;
  for (const { options, bound } of promising) {
    if (bound >= good(stand)) break;
    const known = Math.min(stand.best.cost, stand.sought.known);
    const mostNodes = Math.min(mostOfLeaf, effort.looks);
    const closed = closeLeaf(stand.ground, options, { known, gap: stand.sought.gap, mostNodes });
    effort.looks -= closed.nodes;
    if (closed.better) stand.near.push(closed.better);
    if (closed.better && closed.better.cost < stand.best.cost) stand.best = closed.better;
    lowest = Math.min(lowest, Math.max(bound, closed.bound));
  }
  return lowest;
}
