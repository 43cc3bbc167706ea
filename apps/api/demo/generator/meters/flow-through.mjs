// What really went through a meter, hour by hour: the runs with their true flows, the house's own use, and the faults.
import { dayAt, LAST_DAY, minuteOf, startOfDay, weekday, WORK_FROM } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';

const FIRST = startOfDay(WORK_FROM);
const END = startOfDay(LAST_DAY + 1);

function pour(hours, start, minutes, gpm) {
  let from = Math.max(start, FIRST);
  const until = Math.min(start + minutes, END);
  while (from < until) {
    const hour = Math.floor((from - FIRST) / 60);
    const next = Math.min(until, FIRST + (hour + 1) * 60);
    hours[hour] += (next - from) * gpm;
    from = next;
  }
}

/** A fault that somebody mended ends; the others last. */
const endOf = (fault) => (fault.until ? minuteOf(fault.until) : END);

function faultFactor(property, zone, minute) {
  let factor = 1;
  for (const fault of property.faults) {
    if (fault.zone === zone.name && minute >= minuteOf(fault.since) && minute < endOf(fault)) factor *= fault.factor;
  }
  return factor;
}

function pourRuns(hours, meter, property, dice) {
  const tilt = (property.trueFlows ?? 1) * (1 + 0.01 * dice.normal());
  const truth = new Map(property.zones.map((zone) => [zone.name, tilt * (1 + 0.022 * dice.normal())]));
  for (const { zone, start, minutes } of property.runs) {
    const factor = truth.get(zone.name) * faultFactor(property, zone, start) * (1 + 0.008 * dice.normal());
    if (zone.meter === meter.name) pour(hours, start, minutes, zone.flowGpm * factor);
  }
}

function pourLeaks(hours, meter, property, dice) {
  for (const fault of property.faults) {
    if (fault.leak !== meter.name) continue;
    const end = endOf(fault);
    for (let at = minuteOf(fault.since); at < end; at = FIRST + (Math.floor((at - FIRST) / 60) + 1) * 60) {
      const untilNext = Math.min(60 - ((at - FIRST) % 60), end - at);
      pour(hours, at, untilNext, fault.gpm * (1 + 0.012 * dice.normal()));
    }
  }
}

function pourStrayRuns(hours, meter, property) {
  for (const fault of property.faults) {
    if (fault.stray !== meter.name) continue;
    for (const at of fault.at) pour(hours, minuteOf(at), fault.minutes, fault.gpm);
  }
}

function pourIndoor(hours, meter, dice) {
  if (!meter.indoor) return;
  const { gallons, opens = 6, closes = 22, closed = '' } = meter.indoor;
  for (let day = WORK_FROM; day <= LAST_DAY; day += 1) {
    const used = gallons * (closed.includes(weekday(day)) ? 0.15 : 1) * Math.max(0.3, 1 + 0.12 * dice.normal());
    const shares = Array.from({ length: closes - opens }, () => dice.between(0.3, 1.7));
    const sum = shares.reduce((total, share) => total + share, 0);
    for (const [index, share] of shares.entries()) pour(hours, startOfDay(day) + (opens + index) * 60, 60, (used * share) / sum / 60);
  }
}

function pourHandWatering(hours, meter, property, dice) {
  for (const zone of property.zones) {
    if (zone.more.handGallons === undefined || zone.meter !== meter.name) continue;
    for (let day = WORK_FROM; day <= LAST_DAY; day += 1) {
      if (!['Tue', 'Fri'].includes(weekday(day)) || property.weatherOf.get(day).rain > 3) continue;
      pour(hours, startOfDay(day) + 9 * 60, 20, (zone.more.handGallons / 2 / 20) * dice.between(0.8, 1.2));
    }
  }
}

/** @returns {{hours: Float64Array, until: (minute: number) => number}} gallons by hour, and all gallons up to a minute */
export function flowThrough(meter, property) {
  const dice = diceFor(`flow ${property.name} ${meter.name}`);
  const hours = new Float64Array((END - FIRST) / 60);
  pourRuns(hours, meter, property, dice);
  pourLeaks(hours, meter, property, dice);
  pourStrayRuns(hours, meter, property);
  pourIndoor(hours, meter, dice);
  pourHandWatering(hours, meter, property, dice);
  const fast = 1 + 0.006 * dice.normal();
  for (let hour = 0; hour < hours.length; hour += 1) hours[hour] *= fast;
  const sums = new Float64Array(hours.length + 1);
  for (let hour = 0; hour < hours.length; hour += 1) sums[hour + 1] = sums[hour] + hours[hour];
  const until = (minute) => {
    const place = Math.min(hours.length, Math.max(0, (minute - FIRST) / 60));
    const hour = Math.floor(place);
    return sums[hour] + (place - hour) * (hours[hour] ?? 0);
  };
  return { hours, until };
}

/** Gallons in whole days, both included. */
export const gallonsIn = (flow, firstDay, lastDay) => flow.until(startOfDay(lastDay + 1)) - flow.until(startOfDay(firstDay));

/** The zones that a run list watered in whole days: gallons by the flows on record. */
export function programmedIn(property, firstDay, lastDay) {
  const byZone = new Map(property.zones.map((zone) => [zone.name, 0]));
  for (const { zone, start, minutes } of property.runs) {
    const day = dayAt(start);
    if (day >= firstDay && day <= lastDay) byZone.set(zone.name, byZone.get(zone.name) + minutes * zone.flowGpm);
  }
  return byZone;
}
