// What really went through each meter, hour by hour of the wall clock: runs with their true flows, people, and faults.
import { dateText, dayAt, startOfDay, weekday } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';
import { DAYS_A_MONTH } from './faults.mjs';

/** Smallest flow at which a displacement meter must register nearly all, by size [in] and [gpm]: the table of meter tests, from memory. */
const MINIMUM_TEST_FLOW = new Map([
  [0.625, 0.25],
  [0.75, 0.5],
  [1, 0.75],
  [1.5, 1.5],
  [2, 2],
  [3, 4],
  [4, 7],
  [6, 12],
]); // prettier-ignore
const RUN_NOISE = 0.012;
/** How much of one day's pressure is left the next. */
const WANDERING = 0.94;
/** Hand watering from the meter is little beside the programs. */
const MOST_BY_HAND = 0.08;

export const minimumFlow = (sizeIn) => MINIMUM_TEST_FLOW.get(sizeIn) ?? MINIMUM_TEST_FLOW.get(6);

/** Share of a flow that stands alone which the meter registers: none below a quarter of its minimum test flow. */
const seenShare = (gpm, sizeIn) => Math.min(1, Math.max(0, (gpm / minimumFlow(sizeIn) - 0.25) / 0.75));

/** The Sundays of a year on which clocks change in the United States. */
function isChange(day, month, nth) {
  const date = dateText(day);
  return weekday(day) === 'Sun' && date.slice(5, 7) === month && Math.ceil(Number(date.slice(8)) / 7) === nth;
}
export const isSpringForward = (day, zone) => zone !== 'America/Phoenix' && isChange(day, '03', 2);
export const isFallBack = (day, zone) => zone !== 'America/Phoenix' && isChange(day, '11', 1);

/** A line of pipe behind one meter, or behind one after another. */
class Line {
  constructor(fleet, sizeIn) {
    this.first = startOfDay(fleet.from);
    this.end = startOfDay(fleet.last + 1);
    this.sizeIn = sizeIn;
    this.steady = new Float64Array((this.end - this.first) / 60);
    this.other = new Float64Array(this.steady.length);
  }

  /** Calls back with each hour's part of a span, in minutes. */
  hours(start, end, add) {
    let from = Math.max(start, this.first);
    const until = Math.min(end, this.end);
    while (from < until) {
      const hour = Math.floor((from - this.first) / 60);
      const next = Math.min(until, this.first + (hour + 1) * 60);
      add(hour, next - from, from);
      from = next;
    }
  }

  run(start, minutes, gpm) {
    this.hours(start, start + minutes, (hour, length) => {
      this.other[hour] += length * gpm;
    });
  }

  changeClocks(fleet, zone) {
    for (let day = fleet.from; day <= fleet.last; day += 1) {
      const at = (day - fleet.from) * 24;
      if (isSpringForward(day, zone)) {
        this.other[at + 3] += this.other[at + 2];
        this.other[at + 2] = 0;
        this.steady[at + 2] = 0;
      }
      if (isFallBack(day, zone)) this.steady[at + 1] *= 2;
    }
  }

  /** Sums of what the meter registers; `stands` says in which minutes its register stands still. */
  settle(stands) {
    this.sums = new Float64Array(this.steady.length + 1);
    for (let hour = 0; hour < this.steady.length; hour += 1) {
      const still = stands.some((fault) => this.first + hour * 60 >= fault.start && this.first + hour * 60 < fault.end);
      const steady = this.other[hour] > 0 ? this.steady[hour] : this.steady[hour] * seenShare(this.steady[hour] / 60, this.sizeIn);
      this.sums[hour + 1] = this.sums[hour] + (still ? 0 : this.other[hour] + steady);
    }
  }

  until(minute) {
    const place = Math.min(this.steady.length, Math.max(0, (minute - this.first) / 60));
    const hour = Math.min(this.steady.length - 1, Math.floor(place));
    return this.sums[hour] + (place - hour) * (this.sums[hour + 1] - this.sums[hour]);
  }
}

/** Gallons that a fault adds or takes, by day of the fleet. */
const account = (fault, fleet) => (fault.extra ??= new Float64Array(fleet.last - fleet.from + 1));
function blame(fault, fleet, minute, gallons) {
  const day = dayAt(minute) - fleet.from;
  if (Math.abs(gallons) < 1e-9 || day < 0 || day > fleet.last - fleet.from) return;
  account(fault, fleet)[day] += gallons;
  fault.felt = Math.min(fault.felt ?? minute, minute);
}

const isOn = (fault, minute) => minute >= fault.start && minute < fault.end;
const touches = (fault, zone) => fault.factor !== undefined && (fault.zone ? fault.zone === zone : fault.controller === zone.controller);

function pourRun(place, { zone, start, minutes }) {
  const { property, fleet, dice, lines, pressedGpm } = place;
  if (dayAt(start) > fleet.last) return;
  const season = 1 + property.drift * Math.sin((2 * Math.PI * (dayAt(start) - fleet.from)) / 365);
  const gpm = zone.trueFlow * season * place.pressure[dayAt(start) - fleet.from] * (1 + RUN_NOISE * dice.normal());
  const line = lines.get(zone.meter);
  if (!line) return;
  const active = property.faults.filter((fault) => isOn(fault, start));
  let [flow, length] = [gpm, minutes];
  for (const fault of active.filter((one) => touches(one, zone))) {
    if (fault.isRun) length *= fault.factor;
    else flow *= fault.factor;
    blame(fault, fleet, start, gpm * minutes * (fault.factor - 1));
  }
  for (const fault of active.filter((one) => one.pressed && one.meter === zone.meter)) {
    line.run(start, length, pressedGpm.get(fault));
    blame(fault, fleet, start, length * pressedGpm.get(fault));
  }
  if (active.some((fault) => fault.stuck && fault.zone === zone)) return;
  line.run(start, length, flow);
}

function pourLeak({ fleet, lines, dice }, fault) {
  const line = lines.get(fault.meter);
  line.hours(fault.start, fault.end, (hour, length, from) => {
    const grown = fault.growsFor ? Math.min(1, (from - fault.start) / fault.growsFor) : 1;
    const gallons = length * fault.gpm * grown * (1 + RUN_NOISE * dice.normal());
    line.steady[hour] += gallons;
    blame(fault, fleet, from, gallons);
  });
}

function pourStuck({ fleet, lines }, fault) {
  const line = lines.get(fault.meter);
  line.hours(fault.start, fault.end, (hour, length, from) => {
    line.other[hour] += length * fault.zone.trueFlow;
    blame(fault, fleet, from, length * fault.zone.trueFlow);
  });
}

function pourExtraRuns({ fleet, lines }, fault) {
  const { every, at, minutes } = fault.runs;
  for (let day = dayAt(fault.start); startOfDay(day) + at < fault.end; day += every) {
    const start = startOfDay(day) + at;
    if (start < fault.start) continue;
    lines.get(fault.meter).run(start, minutes, fault.zone.trueFlow);
    blame(fault, fleet, start, minutes * fault.zone.trueFlow);
  }
}

function pourPeople({ property, fleet, lines, dice }) {
  const line = lines.values().next().value;
  for (let day = fleet.from; day <= fleet.last; day += 1) {
    if (property.hand?.metered && ['Tue', 'Fri'].includes(weekday(day)))
      line.run(startOfDay(day) + 560, 20, (property.hand.gallons / 40) * dice.between(0.75, 1.25));
    if (!property.indoor) continue;
    const used = property.indoor.gallons * Math.max(0.3, 1 + 0.14 * dice.normal());
    for (let hour = 6; hour < 22; hour += 1) line.run(startOfDay(day) + hour * 60, 60, (used * dice.between(0.4, 1.6)) / 16 / 60);
  }
}

/** Gallons of the usual month: what the healthy property would have passed for irrigation, over the fleet's whole time. */
export function usualMonth(property, fleet) {
  const runs = property.controllers.flatMap((controller) => controller.runs);
  const run = runs.reduce((sum, { zone, minutes }) => sum + (zone.meter === 'none' ? 0 : minutes * zone.trueFlow), 0);
  const usual = (run / (fleet.last - fleet.from + 1)) * DAYS_A_MONTH;
  if (!property.hand?.metered) return usual;
  property.hand.gallons = Math.ceil(Math.min(property.hand.gallons, (MOST_BY_HAND * usual * 7) / DAYS_A_MONTH));
  return usual + (property.hand.gallons / 7) * DAYS_A_MONTH;
}

/** Pressure wanders over days and weeks, and every flow of the property with it. */
function pressureOf(property, fleet, dice) {
  let off = property.pressureNoise * dice.normal();
  return Float64Array.from({ length: fleet.last - fleet.from + 1 }, () => {
    off = WANDERING * off + Math.sqrt(1 - WANDERING ** 2) * property.pressureNoise * dice.normal();
    return 1 + off;
  });
}

/** Lets the water run; gives each meter its line and each fault its gallons. */
export function pour(property, fleet) {
  const dice = diceFor(`water ${fleet.seed} ${property.name}`);
  const standing = property.meters.filter((meter) => !meter.removed);
  const lines = new Map(standing.map((meter) => [meter.name, new Line(fleet, meter.sizeIn)]));
  const runs = property.controllers.flatMap((controller) => controller.runs);
  // A leak that shows only under pressure gives its gallons in the minutes in which something runs.
  const months = (fleet.last - fleet.from + 1) / DAYS_A_MONTH;
  const minutes = (meter) => runs.reduce((sum, run) => sum + (run.zone.meter === meter ? run.minutes : 0), 0) / months;
  const pressed = property.faults.filter((fault) => fault.pressed);
  const most = 1.5 * Math.max(...property.zones.map((zone) => zone.trueFlow));
  const pressedGpm = new Map(pressed.map((fault) => [fault, Math.min(most, fault.pressed / Math.max(60, minutes(fault.meter)))]));
  const place = { property, fleet, dice, lines, pressedGpm, pressure: pressureOf(property, fleet, dice) };
  for (const run of runs) pourRun(place, run);
  for (const fault of property.faults) {
    if (fault.gpm) pourLeak(place, fault);
    if (fault.stuck) pourStuck(place, fault);
    if (fault.runs) pourExtraRuns(place, fault);
    if (fault.pressed) fault.gpm = pressedGpm.get(fault);
  }
  pourPeople(place);
  for (const [name, line] of lines) {
    line.changeClocks(fleet, property.station.timeZone);
    line.settle(property.faults.filter((fault) => fault.standsStill && fault.meter === name));
  }
  for (const [index, meter] of property.meters.entries())
    meter.line = lines.get(meter.removed ? property.meters[index + 1].name : meter.name);
}
