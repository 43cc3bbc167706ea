import type { RandomSource } from '../random-source.js';
import type { SearchBudget } from '../search-budget.js';
import { packPlan, type PackedPlan } from './pack-plan.js';
import type { Assignment, PlanInput } from './plan-input.js';
import { recreate } from './recreate.js';
import { RouteBook } from './route-book.js';
import { ruin } from './ruin.js';

/** How much worse a plan may be and still be taken, at first and at last, over the mean cost of a stop. */
const FIRST_HEAT = 3;
const LAST_HEAT = 0.05;

/** Rounds between two looks at the budget. */
const ROUNDS_AT_A_TIME = 16;

/**
 * Splits stops over crew days and orders each day so that driving, days off the wanted ones, unevenness and what is left out cost least: ruin
 * and recreate by string removals, with simulated annealing. Hours, windows, loads, skills, dates and locks always hold; a locked stop stays on
 * its day and behind the locked ones before it.
 *
 * @param input - Stops, crew days, travel. [–]
 * @param random - Where chance comes from: the same source gives the same plan for a budget of rounds. [–]
 * @param spent - The budget. [–]
 * @returns Routes and what has no place. [–]
 * @throws {DomainError} As `packPlan` says.
 * @source Christiaens, J. and Vanden Berghe, G. (2020), Slack Induction by String Removals for Vehicle Routing Problems, Transportation Science
 * 54(2), 417-433.
 */
export function solvePlan(input: PlanInput, random: RandomSource, spent: SearchBudget): Assignment {
  const plan = packPlan(input);
  const book = new RouteBook(plan, plan.skeleton);
  const free = Array.from({ length: plan.stops }, (_, stop) => stop).filter((stop) => !plan.locked[stop]);
  let absent = settle(book, free, random);
  const standing = { cost: costOf(book, absent), routes: [...book.routes], absent };
  let cost = standing.cost;
  const scale = cost > 0 && free.length > 0 ? placedCost(book) / Math.max(1, plan.stops - absent.length) : 0;
  for (let rounds = 0, share = spent(0); share < 1 && free.length > 0; share = spent(rounds)) {
    const heat = scale * FIRST_HEAT * (LAST_HEAT / FIRST_HEAT) ** share;
    for (let round = 0; round < ROUNDS_AT_A_TIME; round += 1, rounds += 1) {
      const tried = tryOnce(book, absent, random);
      if (tried.cost >= cost - heat * Math.log(random())) {
        tried.takeBack();
        continue;
      }
      ({ cost, absent } = tried);
      if (cost < standing.cost - 1e-7) Object.assign(standing, { cost, absent, routes: [...book.routes] });
    }
  }
  return finished(plan, standing, random);
}

// First plan, and the last word: every stop without a place is tried everywhere, the costliest to leave out first.
function settle(book: RouteBook, loose: readonly number[], random: RandomSource): number[] {
  let absent = [...loose].sort((one, other) => (book.plan.leaveOut[other] as number) - (book.plan.leaveOut[one] as number));
  for (let before = -1; before !== absent.length && absent.length > 0; ) {
    before = absent.length;
    absent = [...recreate(book, { removed: absent, absent: [] }, random).absent];
  }
  return absent;
}

function finished(plan: PackedPlan, { routes, absent }: { routes: number[][]; absent: number[] }, random: RandomSource): Assignment {
  const book = new RouteBook(plan, routes);
  const unplaced = settle(book, absent, random);
  const nowhere = Array.from({ length: plan.stops }, (_, stop) => stop).filter(
    (stop) => plan.locked[stop] && (book.dayOf[stop] as number) < 0,
  );
  return { routes: book.routes, unplaced: [...unplaced, ...nowhere].sort((one, other) => one - other) };
}

// One round: takes a part out and puts it back otherwise; `takeBack` makes it undone.
function tryOnce(book: RouteBook, absent: readonly number[], random: RandomSource) {
  const before = [...book.routes];
  const broken = ruin(book, random);
  const mended = recreate(book, { removed: broken.removed, absent }, random);
  return {
    cost: costOf(book, mended.absent),
    absent: mended.absent,
    takeBack: () => {
      book.routes = before;
      for (const stop of mended.absent) book.dayOf[stop] = -1;
      for (const stop of absent) book.dayOf[stop] = -1;
      for (const day of new Set([...broken.days, ...mended.days])) book.reckon(day);
    },
  };
}

const placedCost = (book: RouteBook): number => book.cost.reduce((sum, cost) => sum + cost, 0);

const costOf = (book: RouteBook, absent: readonly number[]): number =>
  absent.reduce((sum, stop) => sum + (book.plan.leaveOut[stop] as number), placedCost(book));
