// How long a station has to run: from the need of its zone, as a careful crew would set it.
import { daysOfMonth, LAST_DAY, startOfDay } from '../sky/calendar.mjs';
import { sumOver } from '../ground/soil-balance.mjs';
import { isPaused } from './pauses.mjs';
import { daysAWeek, runsOn, startsOf } from './program-days.mjs';

const JULYS = ['2025-07', '2026-07'];
export const SHOULDER_SHARE = 0.6;

/** Gallons a week that the zone needs in a usual July. */
function julyWeek(zone) {
  const days = JULYS.flatMap((month) => daysOfMonth(month));
  return (sumOver(zone.need, days) / days.length) * 7;
}

/** Minutes of each start that meet July (summer), or the spring and autumn share of it (shoulder). */
export function usualMinutes(zone, program, season) {
  const week = julyWeek(zone) * zone.times * (season === 'shoulder' ? SHOULDER_SHARE : 1);
  const minutes = week / (daysAWeek(program.days) * startsOf(program).length * zone.flowGpm);
  return Math.max(2, Math.round(minutes));
}

/** Starts of a program in a month that no pause takes away. */
export function startsInMonth(program, month, pauses) {
  let count = 0;
  for (const day of daysOfMonth(month, LAST_DAY)) {
    if (!runsOn(program.days, day)) continue;
    count += startsOf(program).filter((start) => !isPaused(pauses, startOfDay(day) + start)).length;
  }
  return count;
}

/** Gallons that some zones need in a month. */
export const monthNeed = (zones, month) => zones.reduce((sum, zone) => sum + sumOver(zone.need, daysOfMonth(month, LAST_DAY)), 0);

/** The minutes that meet one month exactly, for crews that set minutes and leave the percent alone. */
export function exactMinutes(zone, program, month, pauses) {
  const starts = startsInMonth(program, month, pauses);
  return Math.max(1, Math.round((monthNeed([zone], month) * zone.times) / (zone.flowGpm * Math.max(1, starts))));
}

export function stationOf(zone, minutes) {
  const cycles = Math.min(4, Math.max(1, Math.ceil(minutes / zone.cycleMin)));
  return { station: zone.station, minutes, cycles, soak: cycles > 1 ? 30 : null };
}
