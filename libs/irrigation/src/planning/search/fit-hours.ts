import type { DayPattern } from '../days/day-pattern.js';
import { type Assignment, type Ground, priceIn } from '../pricing/assignment.js';
import { excessAfter, type HoursTaken, hoursTaken, take } from './hours-taken.kernel.js';
import { turnDays } from './turn-days.js';

const WEEK = 7;
const MOST_ROUNDS = 200;
const DUST = 1e-6;

/** Where the search for moves stands: slots, steps and minutes are changed as it goes. */
interface Stand {
  readonly ground: Ground;
  readonly options: Assignment['options'];
  readonly slotOf: number[];
  readonly steps: number[];
  readonly hours: HoursTaken;
  patterns: readonly (DayPattern | null)[];
}

interface Move {
  zone: number;
  slot: number;
  steps: number;
}

/**
 * Makes an assignment fit into the hours, and then as cheap as single moves can: first the moves that free a minute for least, then those
 * that cost less and still fit.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param wished - An assignment that may be too long. [–]
 * @returns One that fits. [–]
 */
export function fitHours(ground: Ground, wished: Assignment): Assignment {
  const turned = turnDays(ground, wished);
  const { options, patterns } = turned;
  const stand: Stand = {
    ground,
    options,
    patterns,
    slotOf: [...turned.slotOf],
    steps: [...turned.steps],
    hours: hoursTaken(ground, turned),
  };
  shorten(stand);
  cheapen(stand);
  return { options, patterns: stand.patterns, slotOf: stand.slotOf, steps: stand.steps };
}

function shorten(stand: Stand): void {
  const { hours } = stand;
  const best: Move = { zone: -1, slot: -1, steps: 0 };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const excess = excessAfter(hours, -1, 0, -1, 0);
    if (excess === 0) return;
    let least = Number.POSITIVE_INFINITY;
    eachMove(stand, excess, (move, cost) => {
      // What costs more than the best for all of the excess cannot be better.
      if (cost / excess >= least) return;
      const freed = excess - excessOfMove(stand, move);
      if (freed > DUST && cost / freed < least) {
        Object.assign(best, move);
        least = cost / freed;
      }
    });
    if (least === Number.POSITIVE_INFINITY) break;
    make(stand, best);
  }
  if (excessAfter(hours, -1, 0, -1, 0) === 0) return;
  stand.slotOf.fill(-1);
  stand.steps.fill(0);
  hours.minutes.fill(0);
  hours.loads.fill(0);
}

function cheapen(stand: Stand): void {
  const best: Move = { zone: -1, slot: -1, steps: 0 };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let least = -DUST;
    eachMove(stand, 0, (move, cost) => {
      if (cost >= least || excessOfMove(stand, move) > 0) return;
      Object.assign(best, move);
      least = cost;
    });
    if (least === -DUST) return;
    make(stand, best);
  }
}

// Every zone to every used slot and to none, at the runs worth a look and at those that just fit or just free the excess. The move that is
// shown is the same object each time.
function eachMove(stand: Stand, excess: number, visit: (move: Readonly<Move>, cost: number) => void): void {
  const { slotOf, steps, options } = stand;
  const move: Move = { zone: 0, slot: -1, steps: 0 };
  for (let zone = 0; zone < slotOf.length; zone += 1) {
    const from = slotOf[zone] as number;
    const before = priceAt(stand, zone, from, steps[zone] as number);
    const show = (slot: number, of: number) => {
      if (of < (slot < 0 ? 0 : 1) || (slot === from && of === steps[zone])) return;
      move.zone = zone;
      move.slot = slot;
      move.steps = of;
      visit(move, priceAt(stand, zone, slot, of) - before);
    };
    if (from >= 0) show(-1, 0);
    for (let slot = 0; slot < options.length; slot += 1) showSteps(stand, zone, slot, excess, show);
  }
}

function showSteps(stand: Stand, zone: number, slot: number, excess: number, show: (slot: number, steps: number) => void): void {
  const option = stand.options[slot];
  const choices = option?.zones[zone];
  if (!option || !choices || !stand.patterns[slot]) return;
  for (const steps of choices.steps) show(slot, steps);
  const perStep = stand.ground.frame.step * option.starts;
  const here = stand.slotOf[zone] === slot ? (stand.steps[zone] as number) : 0;
  const last = choices.table.length - 1;
  if (excess === 0) show(slot, Math.min(last, here + Math.floor(roomFor(stand, zone, slot) / perStep + DUST)));
  else {
    show(slot, Math.min(last, here - Math.ceil(excess / perStep)));
    show(slot, Math.min(last, here - 1));
  }
}

function priceAt({ ground, options }: Stand, zone: number, slot: number, steps: number): number {
  const option = slot < 0 ? null : options[slot];
  return option ? priceIn(ground, zone, slot, option, steps) : (ground.dry[zone] as number);
}

function minutesAt({ ground, options }: Stand, slot: number, steps: number): number {
  return steps * ground.frame.step * (options[slot]?.starts ?? 0);
}

function roomFor(stand: Stand, zone: number, slot: number): number {
  const { ground, hours, slotOf, steps } = stand;
  const from = slotOf[zone] as number;
  const freed = from >= 0 && from !== slot ? minutesAt(stand, from, steps[zone] as number) : 0;
  const [mask, ofFrom] = [hours.masks[slot] as number, from < 0 ? 0 : (hours.masks[from] as number)];
  let room = (hours.limits[slot] as number) - (hours.minutes[slot] as number);
  for (let day = 0; day < WEEK; day += 1) {
    if ((mask >> day) & 1) room = Math.min(room, ground.perDay - (hours.loads[day] as number) + ((ofFrom >> day) & 1 ? freed : 0));
  }
  return room;
}

function excessOfMove(stand: Stand, { zone, slot, steps }: Readonly<Move>): number {
  const from = stand.slotOf[zone] as number;
  return excessAfter(stand.hours, from, minutesAt(stand, from, stand.steps[zone] as number), slot, minutesAt(stand, slot, steps));
}

function make(stand: Stand, { zone, slot, steps }: Readonly<Move>): void {
  const from = stand.slotOf[zone] as number;
  if (from >= 0) take(stand.hours, from, -minutesAt(stand, from, stand.steps[zone] as number));
  if (slot >= 0) take(stand.hours, slot, minutesAt(stand, slot, steps));
  stand.slotOf[zone] = slot;
  stand.steps[zone] = steps;
}
