import { feltThirst } from '../demand/felt-thirst.js';
import { daysOfMonth } from '../../calendar/local-date.js';
import type { Program } from '../../settings/settings-fact.js';
import { EVERY_DAY, patternOf, weekdayPattern } from '../days/day-pattern.js';
import { weeksToTry } from '../days/pattern-classes.js';
import { rulesInMonth } from '../days/rules-of-zone.js';
import { openHours } from '../layout/water-window.js';
import type { PlanInput } from '../plan-input.js';
import type { Ground } from '../pricing/assignment.js';
import { planFrame, type PlanFrame, preparedZone, type PreparedZone } from '../pricing/prepared-zone.js';
import { type EffortLeft, FOR_AN_ANSWER, inPart, inShareOfWork } from '../search/effort.js';
import { type Found, GOOD_GAP, searchPrograms } from '../search/search-programs.js';
import { lookAround } from '../search/within-hours.js';
import { buildGround, type PlanGround } from './build-ground.js';
import { percentVariants } from './percent-variants.js';
import { fitStarts } from './fitting/fit-starts.js';
import { programsOf } from './fitting/programs-of.js';
import { inShorterHours } from './shorter-hours.js';

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
  const hours = openHours(input.window, rules, input.zones);
  const frame = planFrame(input, daysOfMonth(input.month).days, hours);
  return {
    frame,
    zones: input.zones.map((zone) => preparedZone(zone, rules, frame, input.flowLimitLPerMin)),
    known: { runs: new Map(), choices: new Map() },
  };
}

/**
 * The programs that cost least: days, starts and percent of every program, program and minutes of every zone, starts laid into the hours.
 *
 * @param input - The controller and the month. [code]
 * @param given - Its ground, where it is known already. [min]
 * @param left - How much may be looked at, changed to what is left: more of it proves more. [–]
 * @returns The best found, and its bound. [–]
 */
export function fullProgram(input: PlanInput, given: PlanGround = planGround(input), left: EffortLeft = { ...FOR_AN_ANSWER }): FullProgram {
  const { best: searched, bound } = inShareOfWork(left, SHARE_OF_SEARCH, (part) => searchAll(input, given, part));
  if (!searched) return nothing(dryCost(input, given.frame));
  const isProven = bound >= (searched.found.cost + searched.extra) * (1 - GOOD_GAP);
  const best = isProven ? searched : inShareOfWork(left, SHARE_AROUND, (part) => nearby(searched, part));
  const costBeforeLayout = best.found.cost + best.extra;
  const first = fitStarts(input, best.ground, [best.found.assignment, ...best.found.others], left);
  const toBetter = { fitted: first, costBeforeLayout: best.found.cost };
  const fitted = inShorterHours(input, best.ground, daysOpen(best.ground), toBetter, left);
  const cost = fitted.cost + best.extra;
  return { programs: programsOf(input, best.ground, fitted), cost, bound: Math.min(bound, costBeforeLayout), costBeforeLayout };
}

/** Of all effort what every search together is given to begin with. [–] */
const A_LITTLE = 0.25;
/** Of what is left the share of the most promising search. [–] */
const SHARE_OF_NEXT = 0.5;

interface Best {
  readonly ground: Ground;
  readonly found: Found;
  readonly extra: number;
}

/** One set of weekdays with the percents that programs may be given, and the bound below which nothing is there. */
interface Search {
  readonly ground: Ground;
  readonly extra: number;
  bound: number;
}

// Percents and sets of weekdays: all are looked at a little first, so that each then has to better the best of them; what is left of the effort
// goes to those that still may, the most promising first.
function searchAll(input: PlanInput, given: PlanGround, left: EffortLeft): { readonly best: Best | null; readonly bound: number } {
  const weeks = weeksOf(input, given.zones);
  const searches = percentVariants(input).flatMap((variant) =>
    weeks.map((week): Search => {
      const ground = buildGround(input, given, week, variant);
      left.work -= stepsToBuild(ground);
      return { ground, extra: variant.presses * input.weights.keyPress, bound: Number.NEGATIVE_INFINITY };
    }),
  );
  let best: Best | null = null;
  const look = (search: Search, share: number) => {
    const { ground, extra } = search;
    const known: number = best ? best.found.cost + best.extra - extra : Number.POSITIVE_INFINITY;
    const found: Found | null = inPart(left, share, (effort) => searchPrograms(ground, daysOpen(ground), { known, effort }));
    search.bound = Math.max(search.bound, (found ? found.bound : known * (1 - GOOD_GAP)) + extra);
    if (found && found.cost < known) best = { ground, found, extra };
  };
  if (searches.length > 1) searches.forEach((search) => look(search, A_LITTLE / searches.length));
  const mayBetter = ({ bound }: Search) => !best || bound < (best.found.cost + best.extra) * (1 - GOOD_GAP);
  const promising = searches.filter(mayBetter).sort((one, other) => one.bound - other.bound);
  promising.forEach((search, at) => {
    if (mayBetter(search)) look(search, at === promising.length - 1 ? 1 : SHARE_OF_NEXT);
  });
  return { best, bound: searches.reduce((least, { bound }) => Math.min(least, bound), Number.POSITIVE_INFINITY) };
}

/** Of all work the share of the search for programs; the rest lays starts and soaks into the hours. [–] */
const SHARE_OF_SEARCH = 0.7;
/** Choices of days that are looked at around the best found, where that is not proven. [–] */
const AROUND = 1_500;
/** Steps of work that pricing one zone in one option of a slot counts as. */
const STEPS_OF_A_PRICE = 600;

function stepsToBuild({ zones, slots }: Ground): number {
  const priced = new Set(slots.map(({ options }) => options));
  return [...priced].reduce((sum, { length }) => sum + length * zones.length * STEPS_OF_A_PRICE, 0);
}

/** Of the work that is left their share. [–] */
const SHARE_AROUND = 0.6;

function nearby({ ground, found, extra }: Best, left: EffortLeft): Best {
  const effort = { nodes: 0, visits: AROUND, looks: 0, layouts: 0, work: left.work };
  const weekly = daysOpen(ground) * ground.perDay;
  const better = lookAround(ground, found, { known: Number.POSITIVE_INFINITY, gap: GOOD_GAP, weekly, effort });
  left.work = effort.work;
  return { ground, extra, found: better };
}

function nothing(cost: number): FullProgram {
  return { programs: [], cost, bound: cost, costBeforeLayout: cost };
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
  return zones.reduce(
    (sum, { needLitresPerDay }) => sum + weights.thirst * feltThirst(needLitresPerDay * days, needLitresPerDay * days),
    0,
  );
}
