import { daysOfMonth } from '../../calendar/local-date.js';
import type { Program } from '../../settings/settings-fact.js';
import { EVERY_DAY, patternOf, weekdayPattern } from '../days/day-pattern.js';
import { weeksToTry } from '../days/pattern-classes.js';
import { rulesInMonth } from '../days/rules-of-zone.js';
import { openHours } from '../layout/water-window.js';
import type { PlanInput } from '../plan-input.js';
import type { Ground } from '../search/assignment.js';
import { planFrame, type PlanFrame, preparedZone, type PreparedZone } from '../search/prepared-zone.js';
import { type Found, GOOD_GAP, searchPrograms } from '../search/search-programs.js';
import { buildGround, type PlanGround } from './build-ground.js';
import { percentVariants } from './percent-variants.js';
import { fitStarts } from './fit-starts.js';

/**
 * The full program: what to enter, its cost as the search counts it (water and presses without start times), the bound below which no zones,
 * programs, days and minutes are, and what fitting starts and soaks into the hours has cost beyond it.
 */
export interface FullProgram {
  readonly programs: readonly Program[];
  readonly cost: number;
  readonly bound: number;
  readonly costBeforeLayout: number;
}

/**
 * What rules and month make of a controller.
 *
 * @param input - The controller and the month. [code]
 * @returns Frame and zones. [min]
 */
export function planGround(input: PlanInput): PlanGround {
  const rules = rulesInMonth(input.rules, input.month, input.place);
  // Several starts of one program fall on one date.
  const hours = openHours(input.window, rules, input.zones, input.traits.cycleSoak !== true);
  const frame = planFrame(input, daysOfMonth(input.month).days, hours);
  return { frame, zones: input.zones.map((zone) => preparedZone(zone, rules, frame, input.flowLimitLPerMin)), known: new Map() };
}

/**
 * The programs that cost least: days, starts and percent of every program, program and minutes of every zone, starts laid into the hours.
 *
 * @param input - The controller and the month. [code]
 * @param given - Its ground, where it is known already. [min]
 * @returns The best found, and its bound. [–]
 */
export function fullProgram(input: PlanInput, given: PlanGround = planGround(input)): FullProgram {
  const { frame, zones } = given;
  let best: { readonly ground: Ground; readonly found: Found; readonly extra: number } | null = null;
  let bound = Number.POSITIVE_INFINITY;
  for (const variant of percentVariants(input)) {
    const extra = variant.presses * input.weights.keyPress;
    for (const week of weeksOf(input, zones)) {
      const ground = buildGround(input, given, week, variant);
      const known = best ? best.found.cost + best.extra - extra : Number.POSITIVE_INFINITY;
      const found = searchPrograms(ground, daysOpen(ground), known);
      bound = Math.min(bound, (found ? found.bound : known * (1 - GOOD_GAP)) + extra);
      if (!found) continue;
      if (!best || found.cost + extra < best.found.cost + best.extra) best = { ground, found, extra };
    }
  }
  if (!best) return { programs: [], cost: dryCost(input, frame), bound: dryCost(input, frame), costBeforeLayout: dryCost(input, frame) };
  const costBeforeLayout = best.found.cost + best.extra;
  const { placed, cost: fitted } = fitStarts(input, best.ground, best.found.assignment);
  const cost = fitted + best.extra;
  return { programs: placed.programs, cost, bound: Math.min(bound, costBeforeLayout), costBeforeLayout };
}

function weeksOf({ present, month }: PlanInput, zones: readonly PreparedZone[]): readonly number[] {
  const ruled = zones.filter(({ rules }) => rules.daysPerWeek < 7 && rules.parity === null && !rules.forbidden);
  if (!ruled.length) return [EVERY_DAY];
  const most = Math.min(...ruled.map(({ rules }) => rules.daysPerWeek));
  const allowed = ruled.reduce((mask, { rules }) => mask | rules.mask, 0);
  return weeksToTry(
    most,
    allowed,
    (present ?? []).map(({ days }) => patternOf(days, `${month}-01`).mask),
  );
}

function daysOpen({ slots }: Ground): number {
  const mask = slots.reduce(
    (all, { options }) => options.reduce((of, { days }) => days.patterns.reduce((each, pattern) => each | pattern.mask, of), all),
    0,
  );
  return weekdayPattern(mask).perWeek;
}

function dryCost({ weights, zones }: PlanInput, { days }: PlanFrame): number {
  return zones.reduce((sum, { needLitresPerDay }) => sum + weights.thirst * needLitresPerDay * days, 0);
}
