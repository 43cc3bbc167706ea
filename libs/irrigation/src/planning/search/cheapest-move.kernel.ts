import type { LeafColumn } from '../leaf/leaf-bound.kernel.js';
import { columnOf } from '../leaf/leaf-problem.js';
import { type Ground, priceIn } from '../pricing/assignment.js';
import type { SlotOption } from '../pricing/slots.js';
import type { HoursTaken } from './hours-taken.kernel.js';

const WEEK = 7;
const DUST = 1e-6;

/** An assignment as single moves change it: options whose days are settled (null: none), slot and steps of each zone, and hours that are taken. */
export interface Moving {
  readonly ground: Ground;
  readonly options: readonly (SlotOption | null)[];
  readonly slotOf: readonly number[];
  readonly steps: readonly number[];
  readonly hours: HoursTaken;
  readonly runs: MovingRuns;
  /** Moves looked at until now. */
  looked: number;
}

/** What zones may run in each slot, and the least that each costs there, by slot and zone. */
interface MovingRuns {
  readonly columns: readonly (LeafColumn | null)[];
  readonly least: Float64Array;
}

/** A zone that goes to a slot (-1: none) with some steps. */
export interface Move {
  zone: number;
  slot: number;
  steps: number;
}

/**
 * What zones may run in each slot as single moves ask for it.
 *
 * @param ground - Zones and slots. [–]
 * @param options - What each slot is given; null is none. [–]
 * @returns Runs, and the least that each zone costs in each slot: infinite where it must not be. [–]
 */
export function movingRuns(ground: Ground, options: readonly (SlotOption | null)[]): MovingRuns {
  const zones = ground.zones.length;
  const columns = options.map((option, slot) => option && columnOf(ground, option, slot));
  const least = new Float64Array(options.length * zones).fill(Number.POSITIVE_INFINITY);
  for (let slot = 0; slot < columns.length; slot += 1) {
    const column = columns[slot];
    if (!column) continue;
    for (let zone = 0; zone < zones; zone += 1) {
      for (let run = column.from[zone] as number; run < (column.from[zone + 1] as number); run += 1) {
        const at = slot * zones + zone;
        least[at] = Math.min(least[at] as number, column.price[run] as number);
      }
    }
  }
  return { columns, least };
}

/** Excess of each day without the zone that is looked at, and runs of its own. [min] and [steps] */
const overOfDays = new Float64Array(WEEK);
const ownRuns = new Float64Array(2);

/** A look at one zone and one slot that it may go to (as many as there are: to none), and the best move until now. */
interface Look {
  moving: Moving;
  best: Move;
  excess: number;
  isFound: boolean;
  zone: number;
  slot: number;
  mask: number;
}

/** Numbers of a look: what the best costs (a minute freed, where something is to be freed), the zone's price and minutes now, and excess. */
const [LEAST, BEFORE, LESS, WITHOUT, ELSEWHERE, OWN, ROOM] = [0, 1, 2, 3, 4, 5, 6] as const;
const of = new Float64Array(7);

/**
 * The best single move: every zone to every used slot and to none, at the runs worth a look and at those that just fit or just free the excess.
 *
 * Where programs or days are too long, the best is what frees a minute for least; else what lowers the cost most and still fits.
 *
 * @param moving - The assignment. [–]
 * @param excess - By how much programs and days are too long now; 0 where all fits. [min]
 * @param best - Takes the move. [–]
 * @returns Whether there is one. [–]
 */
export function cheapestMove(moving: Moving, excess: number, best: Move): boolean {
  const { slotOf, runs } = moving;
  const slots = runs.columns.length;
  const look: Look = { moving, best, excess, isFound: false, zone: 0, slot: 0, mask: 0 };
  of[LEAST] = excess > 0 ? Number.POSITIVE_INFINITY : -DUST;
  for (let zone = 0; zone < slotOf.length; zone += 1) {
    const from = slotOf[zone] as number;
    look.zone = zone;
    leave(look, from);
    // Its own slot first, for what frees least there is what all others have to better; to be dry comes last.
    if (from >= 0) lookAt(look, from);
    for (let slot = 0; slot < slots; slot += 1) if (slot !== from) lookAt(look, slot);
    if (from >= 0) lookAtDry(look);
  }
  return look.isFound;
}

// Price and minutes of the zone now, and excess without it: of each day, and of all days and slots.
function leave({ moving, zone }: Look, from: number): void {
  const { ground, options, steps, hours } = moving;
  const { perDay, minutes, limits, masks, loads } = hours;
  const option = from < 0 ? null : (options[from] as SlotOption);
  const now = steps[zone] as number;
  const less = option ? now * ground.frame.step * option.starts : 0;
  const mask = option ? (masks[from] as number) : 0;
  let without = 0;
  for (let slot = 0; slot < minutes.length; slot += 1) {
    without += Math.max(0, (minutes[slot] as number) - (slot === from ? less : 0) - (limits[slot] as number));
  }
  for (let day = 0; day < WEEK; day += 1) {
    const over = (loads[day] as number) - ((mask >> day) & 1 ? less : 0) - perDay;
    overOfDays[day] = over;
    if (over > 0) without += over;
  }
  of[BEFORE] = option ? priceIn(ground, zone, from, option, now) : (ground.dry[zone] as number);
  of[LESS] = less;
  of[WITHOUT] = without;
}

function lookAt(look: Look, slot: number): void {
  const { moving, zone, excess } = look;
  const { ground, options, slotOf, steps, runs } = moving;
  const column = runs.columns[slot];
  moving.looked += 1;
  if (!column || !mayBeBest(look, runs.least[slot * slotOf.length + zone] as number)) return;
  enter(look, slot);
  const from = slotOf[zone] as number;
  const now = slot === from ? (steps[zone] as number) : 0;
  const last = column.from[zone + 1] as number;
  for (let run = column.from[zone] as number; run < last; run += 1) {
    const to = column.steps[run] as number;
    if (to !== now) show(look, to, column.price[run] as number, column.minutes[run] as number);
  }
  const option = options[slot] as SlotOption;
  const perStep = ground.frame.step * option.starts;
  const count = ownSteps(option.zones[zone]?.table.length ?? 1, perStep, now, excess);
  for (let at = 0; at < count; at += 1) {
    const to = ownRuns[at] as number;
    if (to !== now) show(look, to, priceIn(ground, zone, slot, option, to), to * perStep);
  }
}

function lookAtDry(look: Look): void {
  const { moving, zone } = look;
  const dry = moving.ground.dry[zone] as number;
  look.slot = -1;
  look.mask = 0;
  of[ELSEWHERE] = of[WITHOUT] as number;
  of[OWN] = 0;
  show(look, 0, dry, 0);
}

// What costs more than the best for all of the excess cannot be better, whatever its run.
function mayBeBest({ excess }: Look, price: number): boolean {
  return (price - (of[BEFORE] as number)) / (excess > 0 ? excess : 1) < (of[LEAST] as number);
}

// What the slot and its days have to do with the excess, and all else.
function enter(look: Look, slot: number): void {
  const { slotOf, hours } = look.moving;
  const mask = hours.masks[slot] as number;
  const less = slot === slotOf[look.zone] ? (of[LESS] as number) : 0;
  const own = (hours.minutes[slot] as number) - less - (hours.limits[slot] as number);
  let [elsewhere, room] = [(of[WITHOUT] as number) - Math.max(0, own), -own];
  for (let day = 0; day < WEEK; day += 1) {
    if (((mask >> day) & 1) === 0) continue;
    const over = overOfDays[day] as number;
    if (over > 0) elsewhere -= over;
    if (-over < room) room = -over;
  }
  look.slot = slot;
  look.mask = mask;
  of[ELSEWHERE] = elsewhere;
  of[OWN] = own;
  of[ROOM] = room;
}

function show(look: Look, steps: number, price: number, more: number): void {
  const { moving, best, excess, mask, slot } = look;
  moving.looked += 1;
  if (!mayBeBest(look, price)) return;
  const cost = price - (of[BEFORE] as number);
  let after = (of[ELSEWHERE] as number) + (slot >= 0 ? Math.max(0, (of[OWN] as number) + more) : 0);
  for (let day = 0; day < WEEK; day += 1) {
    if ((mask >> day) & 1) after += Math.max(0, (overOfDays[day] as number) + more);
  }
  const freed = excess - (after > DUST ? after : 0);
  const rate = excess > 0 ? cost / freed : cost;
  const isBetter = excess > 0 ? freed > DUST && rate < (of[LEAST] as number) : after <= DUST;
  if (!isBetter) return;
  of[LEAST] = rate;
  look.isFound = true;
  best.zone = look.zone;
  best.slot = slot;
  best.steps = steps;
}

// Runs of a zone's own beside those that are worth a look anyway: what just frees the excess and one step less, or what just fits.
function ownSteps(length: number, perStep: number, now: number, excess: number): number {
  const last = length - 1;
  const fitting = excess > 0 ? now - Math.ceil(excess / perStep) : Math.floor((of[ROOM] as number) / perStep + DUST);
  ownRuns[0] = Math.min(last, fitting);
  ownRuns[1] = excess > 0 ? Math.min(last, now - 1) : 0;
  if ((ownRuns[0] as number) >= 1) return (ownRuns[1] as number) >= 1 ? 2 : 1;
  ownRuns[0] = ownRuns[1] as number;
  return ownRuns[0] >= 1 ? 1 : 0;
}
