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
}

/** A zone that goes to a slot (-1: none) with some steps. */
export interface Move {
  zone: number;
  slot: number;
  steps: number;
}

/** A look at one zone and one slot that it may go to: what it leaves, and the best move until now. Excess without the zone is not asked for yet below 0. */
interface Look {
  readonly moving: Moving;
  readonly excess: number;
  readonly best: Move;
  readonly loads: Float64Array;
  least: number;
  isFound: boolean;
  zone: number;
  from: number;
  less: number;
  before: number;
  elsewhere: number;
  own: number;
  days: number;
}

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
  const { ground, options, slotOf, steps } = moving;
  const least = excess > 0 ? Number.POSITIVE_INFINITY : -DUST;
  const look: Look = {
    ...{ moving, excess, best, loads: new Float64Array(WEEK), least, isFound: false },
    ...{ zone: 0, from: -1, less: 0, before: 0, elsewhere: -1, own: 0, days: 0 },
  };
  for (let zone = 0; zone < slotOf.length; zone += 1) {
    const from = slotOf[zone] as number;
    const left = from < 0 ? null : (options[from] as SlotOption);
    const dry = ground.dry[zone] as number;
    look.zone = zone;
    look.from = from;
    look.before = left ? priceIn(ground, zone, from, left, steps[zone] as number) : dry;
    look.less = left ? (steps[zone] as number) * ground.frame.step * left.starts : 0;
    look.elsewhere = -1;
    if (left) show(look, -1, 0, dry, 0);
    for (let slot = 0; slot < options.length; slot += 1) {
      look.elsewhere = -1;
      showSteps(look, slot);
    }
  }
  return look.isFound;
}

function showSteps(look: Look, slot: number): void {
  const { ground, options, steps } = look.moving;
  const option = options[slot];
  const choices = option?.zones[look.zone];
  if (!option || !choices) return;
  const leaving = ground.frame.weights.keyPress * (ground.leaving[look.zone]?.[slot] ?? 0);
  const perStep = ground.frame.step * option.starts;
  const now = slot === look.from ? (steps[look.zone] as number) : 0;
  for (let at = 0; at < choices.steps.length; at += 1) {
    const to = choices.steps[at] as number;
    if (to !== now) show(look, slot, to, (choices.prices[at] as number) + leaving, to * perStep);
  }
  const last = choices.table.length - 1;
  const fitting = look.excess > 0 ? now - Math.ceil(look.excess / perStep) : now + Math.floor(roomFor(look, slot) / perStep + DUST);
  showRun(look, slot, option, Math.min(last, fitting));
  if (look.excess > 0) showRun(look, slot, option, Math.min(last, now - 1));
}

function showRun(look: Look, slot: number, option: SlotOption, to: number): void {
  const { ground, steps } = look.moving;
  if (to < 1 || (slot === look.from && to === steps[look.zone])) return;
  show(look, slot, to, priceIn(ground, look.zone, slot, option, to), to * ground.frame.step * option.starts);
}

function show(look: Look, slot: number, to: number, price: number, more: number): void {
  const { excess, best } = look;
  const cost = price - look.before;
  // What costs more than the best for all of the excess cannot be better.
  if (cost / (excess > 0 ? excess : 1) >= look.least) return;
  if (look.elsewhere < 0) leave(look, slot);
  const after = excessWith(look, slot, more);
  if (excess > 0) {
    const freed = excess - after;
    if (freed <= DUST || cost / freed >= look.least) return;
    look.least = cost / freed;
  } else {
    if (after > 0) return;
    look.least = cost;
  }
  look.isFound = true;
  best.zone = look.zone;
  best.slot = slot;
  best.steps = to;
}

// Excess without the zone: what the slot and its days have to do with it, and all else.
function leave(look: Look, slot: number): void {
  const { perDay, minutes, limits, masks, loads } = look.moving.hours;
  const { from, less } = look;
  const ofFrom = from < 0 ? 0 : (masks[from] as number);
  const mask = slot < 0 ? 0 : (masks[slot] as number);
  let [elsewhere, days] = [0, 0];
  for (let other = 0; other < minutes.length; other += 1) {
    const over = (minutes[other] as number) - (other === from ? less : 0) - (limits[other] as number);
    if (other === slot) look.own = over;
    else if (over > 0) elsewhere += over;
  }
  for (let day = 0; day < WEEK; day += 1) {
    const over = (loads[day] as number) - ((ofFrom >> day) & 1 ? less : 0) - perDay;
    if ((mask >> day) & 1) {
      look.loads[days] = over;
      days += 1;
    } else if (over > 0) elsewhere += over;
  }
  look.elsewhere = elsewhere;
  look.days = days;
}

function excessWith({ elsewhere, own, days, loads }: Look, slot: number, more: number): number {
  let excess = elsewhere + (slot >= 0 && own + more > 0 ? own + more : 0);
  for (let day = 0; day < days; day += 1) {
    const over = (loads[day] as number) + more;
    if (over > 0) excess += over;
  }
  return excess > DUST ? excess : 0;
}

// What the slot and its days hold beyond what is taken, once the zone has left another slot.
function roomFor({ moving, from, less }: Look, slot: number): number {
  const { perDay, minutes, limits, masks, loads } = moving.hours;
  const freed = from >= 0 && from !== slot ? less : 0;
  const [mask, ofFrom] = [masks[slot] as number, from < 0 ? 0 : (masks[from] as number)];
  let room = (limits[slot] as number) - (minutes[slot] as number);
  for (let day = 0; day < WEEK; day += 1) {
    if ((mask >> day) & 1) room = Math.min(room, perDay - (loads[day] as number) + ((ofFrom >> day) & 1 ? freed : 0));
  }
  return room;
}
