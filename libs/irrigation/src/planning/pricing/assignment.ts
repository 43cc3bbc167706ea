import type { DayPattern } from '../days/day-pattern.js';
import { longestStart } from '../layout/longest-start.js';
import type { PlanFrame, PreparedZone } from './prepared-zone.js';
import { runSetting, stationNow } from './run-setting.js';
import type { Slot, SlotOption } from './slots.js';

const DAYS_PER_WEEK = 7;

/** What a choice of options comes to: days of each slot (null: unused), and of each zone its slot (-1: none) and its steps per start. */
export interface Assignment {
  readonly options: readonly (SlotOption | null)[];
  readonly patterns: readonly (DayPattern | null)[];
  readonly slotOf: readonly number[];
  readonly steps: readonly number[];
}

/** The search's ground: zones, slots, what a zone costs dry, and what all share. */
export interface Ground {
  readonly zones: readonly PreparedZone[];
  readonly slots: readonly Slot[];
  readonly dry: readonly number[];
  /** Presses that a zone costs in a slot because it has to leave others. [–] */
  readonly leaving: readonly (readonly number[])[];
  readonly frame: PlanFrame;
  /** Minutes that may run on one day. [min] */
  readonly perDay: number;
  /** Weekdays that rules leave ruled zones, Monday the lowest bit. [code] */
  readonly week: number;
}

/**
 * Price of a zone in a slot at some steps: water, presses there, and presses where it leaves.
 *
 * @param ground - Zones and slots. [–]
 * @param zone - Index of the zone. [–]
 * @param slot - Index of the slot. [–]
 * @param option - What the slot is given. [–]
 * @param steps - Steps per start, above zero. [steps]
 * @returns The price, infinite where it must not be. [–]
 */
export function priceIn(ground: Ground, zone: number, slot: number, option: SlotOption, steps: number): number {
  const choices = option.zones[zone];
  if (!choices || steps < 1 || steps > choices.most) return Number.POSITIVE_INFINITY;
  const leaving = ground.frame.weights.keyPress * (ground.leaving[zone]?.[slot] ?? 0);
  const known = choices.table[steps];
  if (known !== undefined && !Number.isNaN(known)) return known + leaving;
  const prepared = ground.zones[zone] as PreparedZone;
  const found = stationNow(ground.slots[slot]?.present, prepared.zone.station);
  const { presses } = runSetting(prepared, ground.frame, steps, option.inForce, found);
  const price = choices.costs.priceOf(steps) + ground.frame.weights.keyPress * presses;
  if (steps < choices.table.length) choices.table[steps] = price;
  return price + leaving;
}

/**
 * Cost of an assignment: zones, and presses of days and percents.
 *
 * @param ground - Zones and slots. [–]
 * @param assignment - The assignment. [–]
 * @returns Its cost. [–]
 */
export function costOf(ground: Ground, assignment: Assignment): number {
  const { options, slotOf, steps } = assignment;
  const { keyPress } = ground.frame.weights;
  let [cost, used] = [0, 0];
  for (let zone = 0; zone < slotOf.length; zone += 1) {
    const slot = slotOf[zone] as number;
    const option = slot < 0 ? null : options[slot];
    cost += option ? priceIn(ground, zone, slot, option, steps[zone] as number) : (ground.dry[zone] as number);
    if (option && !(used & (1 << slot))) cost += keyPress * option.presses;
    if (option) used |= 1 << slot;
  }
  return cost;
}

/**
 * Minutes of each slot on one of its days.
 *
 * @param ground - Zones and slots. [–]
 * @param assignment - The assignment. [–]
 * @returns Minutes by slot. [min]
 */
export function minutesOfSlots(ground: Ground, assignment: Assignment): number[] {
  const { options, slotOf, steps } = assignment;
  const minutes = options.map(() => 0);
  slotOf.forEach((slot, zone) => {
    const option = slot < 0 ? null : options[slot];
    if (option) minutes[slot] = (minutes[slot] as number) + (steps[zone] as number) * ground.frame.step * option.starts;
  });
  return minutes;
}

/**
 * Minutes that a program may run on one of its days: its starts are alike, and each has to lie within one piece of the hours.
 *
 * @param ground - Hours. [min]
 * @param option - What the program is given. [–]
 * @returns Minutes. [min]
 */
export function programLimit(ground: Ground, option: SlotOption): number {
  const { starts, days } = option;
  return starts * longestStart(ground.frame.hours, starts, days.perWeek === DAYS_PER_WEEK);
}

/**
 * Minutes by which programs and weekdays are too long.
 *
 * @param ground - Limits of a day and a program. [min]
 * @param chosen - What the slots are given, and their days. [d]
 * @param minutes - Minutes of the slots on one of their days. [min]
 * @returns Sum of all excess; 0 where everything fits. [min]
 */
export function excessOf(ground: Ground, chosen: Pick<Assignment, 'options' | 'patterns'>, minutes: readonly number[]): number {
  const { perDay } = ground;
  const { options, patterns } = chosen;
  let excess = 0;
  for (let slot = 0; slot < minutes.length; slot += 1) {
    const option = options[slot];
    if (option) excess += Math.max(0, (minutes[slot] as number) - programLimit(ground, option));
  }
  for (let bit = 1; bit < 1 << DAYS_PER_WEEK; bit <<= 1) {
    let load = -perDay;
    for (let slot = 0; slot < minutes.length; slot += 1) if ((patterns[slot]?.mask ?? 0) & bit) load += minutes[slot] as number;
    if (load > 0) excess += load;
  }
  return excess > 1e-6 ? excess : 0;
}
