import { EVERY_DAY } from '../days/day-pattern.js';
import type { Program } from '../../settings/settings-fact.js';
import type { OpenHours, OpenPiece } from './water-window.js';

/** Starts are set to whole steps of this, and to the minute where hours are short: common practice, no source. [min] */
export const START_STEP = 5;
const DAY = 1440;
const MOST_ORDERS = 24;
const DUST = 1e-9;

/** Puts programs somewhere in the hours; null where they do not fit. */
export type Placing = (programs: readonly Program[]) => readonly Program[] | null;

/**
 * A program without its start times: the weekdays it can fall on, whether these are all days, what one start takes with its soaks, starts a day,
 * how far apart they are at least, and its largest flow.
 */
export interface UnplacedProgram {
  readonly mask: number;
  readonly isDaily: boolean;
  readonly length: number;
  readonly starts: number;
  readonly apart: number;
  readonly flowLPerMin: number;
}

/**
 * Start times by program in minutes after midnight, which programs have theirs after the night's midnight, so that their days are set one later,
 * and by how much runs end after the pieces of the hours that they begin in. [min]
 */
export interface PlacedStarts {
  readonly starts: readonly (readonly number[])[];
  readonly dayLater: readonly boolean[];
  readonly excess: number;
}

/** What bounds running side by side: how many programs, and what meter and main carry. [L/min] */
export interface SideBySide {
  readonly runsAtOnce: number;
  readonly flowLimitLPerMin: number | null;
}

/**
 * Puts starts one after the other, or side by side where timer, meter and main allow, each within one piece of the hours, in the order of
 * programs that ends first.
 *
 * Programs that never fall on one day may start at one time; while one waits between its starts another may run. A timer sets days once for all
 * starts of a program: where it does not run daily, all of them are on one date.
 *
 * @param programs - The programs. [min]
 * @param hours - Hours in which everything runs. [min]
 * @param limits - What may run side by side. [L/min]
 * @param step - Whole steps that starts are set to. [min]
 * @returns Starts as minutes after midnight, and by how much they end too late. [min]
 */
export function placeStarts(programs: readonly UnplacedProgram[], hours: OpenHours, limits: SideBySide, step = START_STEP): PlacedStarts {
  const pieces = programs.map(({ starts, isDaily }) =>
    starts > 1 && !isDaily ? hours.ofDate : hours.pieces.map(({ after, minutes }) => ({ after: after + hours.from, minutes })),
  );
  let best: readonly Placed[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const order of ordersOf(programs.length)) {
    const { placed, excess } = placedIn(order, { programs, pieces, limits, step }, least);
    if (excess < least) [best, least] = [placed, excess];
    if (least === 0) break;
  }
  const begins = programs.map((_, at) => best.filter(({ program }) => program === at).map(({ begin }) => begin));
  return {
    starts: begins.map((of) => of.map((begin) => begin % DAY)),
    dayLater: begins.map((of) => (of[0] ?? 0) >= DAY),
    excess: programs.length ? least : 0,
  };
}

/** A start, from the midnight of its day: beyond the next one where a night reaches over it. */
interface Placed {
  readonly program: number;
  readonly begin: number;
  readonly end: number;
  readonly until: number;
}

interface ToPlace {
  readonly programs: readonly UnplacedProgram[];
  readonly pieces: readonly (readonly OpenPiece[])[];
  readonly limits: SideBySide;
  readonly step: number;
}

// Round by round: the first starts of all programs, then the second ones; given up where it is no better than what is known.
function placedIn(
  order: readonly number[],
  about: ToPlace,
  known: number,
): { readonly placed: readonly Placed[]; readonly excess: number } {
  const { programs } = about;
  const placed: Placed[] = [];
  const late = new Map<number, number>();
  let excess = 0;
  const rounds = Math.max(0, ...programs.map(({ starts }) => starts));
  for (let round = 0; round < rounds; round += 1) {
    for (const at of order) {
      if (round >= (programs[at] as UnplacedProgram).starts) continue;
      const next = place(placed, at, about);
      placed.push(next);
      // By how much the last run of each piece ends after it.
      const before = late.get(next.until) ?? 0;
      const now = Math.max(before, next.end - next.until);
      if (now > DUST) late.set(next.until, now);
      if (now > DUST) excess += now - before;
      if (excess >= known) return { placed, excess };
    }
  }
  return { placed, excess };
}

// In the first piece of the hours that holds it; where none does, in the one where it ends least too late.
function place(placed: readonly Placed[], at: number, about: ToPlace): Placed {
  const { length, apart } = about.programs[at] as UnplacedProgram;
  const before = placed.filter((each) => each.program === at).at(-1);
  const ready = before ? Math.max(before.end, before.begin + apart) : 0;
  let best: Placed = { program: at, begin: ready, end: ready + length, until: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const { after, minutes } of about.pieces[at] ?? []) {
    const begin = earliest(placed, at, Math.max(ready, after), about);
    const late = Math.max(0, begin + length - after - minutes);
    if (late >= least) continue;
    [best, least] = [{ program: at, begin, end: begin + length, until: after + minutes }, late];
    if (late <= DUST) break;
  }
  return best;
}

interface Taken {
  readonly begin: number;
  readonly end: number;
  readonly flowLPerMin: number;
}

// What runs on days of a program, on the line of one of them: nights and dates reach into their neighbours.
function takenBeside(placed: readonly Placed[], mask: number, programs: readonly UnplacedProgram[]): readonly Taken[] {
  const taken: Taken[] = [];
  for (const { program, begin, end } of placed) {
    const { mask: other, flowLPerMin } = programs[program] as UnplacedProgram;
    for (let days = -1; days <= 1; days += 1) {
      if ((dayLater(other, -days) & mask) !== 0) taken.push({ begin: begin + days * DAY, end: end + days * DAY, flowLPerMin });
    }
  }
  return taken;
}

function dayLater(mask: number, days: number): number {
  if (days === 0) return mask;
  return days > 0 ? ((mask << 1) | (mask >> 6)) & EVERY_DAY : ((mask >> 1) | (mask << 6)) & EVERY_DAY;
}

function earliest(placed: readonly Placed[], at: number, ready: number, { programs, limits, step }: ToPlace): number {
  const { mask, length, flowLPerMin } = programs[at] as UnplacedProgram;
  const others = takenBeside(placed, mask, programs);
  const times = [stepAfter(ready, step), ...others.map(({ end }) => stepAfter(end, step)).filter((time) => time > ready)];
  times.sort((a, b) => a - b);
  const isFree = (time: number) => {
    const beside = others.filter(({ begin, end }) => begin < time + length - DUST && time < end - DUST);
    if (beside.length === 0) return true;
    // All that touch it are taken as running together: safe, if not the tightest.
    const flow = beside.reduce((sum, each) => sum + each.flowLPerMin, flowLPerMin);
    return beside.length < limits.runsAtOnce && limits.flowLimitLPerMin !== null && flow <= limits.flowLimitLPerMin;
  };
  return times.find(isFree) ?? (times.at(-1) as number);
}

// The next whole step of the clock.
function stepAfter(minute: number, step: number): number {
  return Math.max(0, Math.ceil(minute / step - DUST)) * step;
}

const knownOrders = new Map<number, readonly (readonly number[])[]>();

function ordersOf(length: number): readonly (readonly number[])[] {
  const known = knownOrders.get(length) ?? permutations(length);
  knownOrders.set(length, known);
  return known;
}

function permutations(length: number): readonly (readonly number[])[] {
  const orders: (readonly number[])[] = [];
  const grow = (order: readonly number[]) => {
    if (orders.length >= MOST_ORDERS) return;
    if (order.length === length) orders.push(order);
    else for (let at = 0; at < length; at += 1) if (!order.includes(at)) grow([...order, at]);
  };
  grow([]);
  return orders;
}
