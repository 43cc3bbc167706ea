import type { ClockChange } from '../calendar/clock-change.js';
import { dateOfDayNumber, dayNumberOfDate } from '../calendar/local-date.js';
import type { ReplayedRun } from '../settings/replay/replay-starts.js';

const MINUTES_PER_DAY = 1440;

/** A run on the wall clock: its local date and the minute after midnight at which it begins. */
export interface WallClockRun extends ReplayedRun {
  readonly dayNumber: number;
  readonly date: string;
  readonly beginMinute: number;
}

/**
 * A run as the wall clock shows it.
 *
 * @param run - The run, in elapsed minutes. [min]
 * @param clockChanges - The place's changes of clock, in order of time. [code]
 * @returns The run with its local date and minute. [min]
 */
export function onWallClock(run: ReplayedRun, clockChanges: readonly ClockChange[]): WallClockRun {
  let shift = 0;
  for (const change of clockChanges) {
    const changedAt = dayNumberOfDate(change.date) * MINUTES_PER_DAY + change.atMinute - shift;
    if (run.begin < changedAt) break;
    shift += change.shiftMinutes;
  }
  const wall = run.begin + shift;
  const dayNumber = Math.floor(wall / MINUTES_PER_DAY);
  const { station, program, begin, end, first } = run;
  return { station, program, begin, end, first, dayNumber, date: dateOnce(dayNumber), beginMinute: wall - dayNumber * MINUTES_PER_DAY };
}

let lastDay = 0;
let lastDate = dateOfDayNumber(lastDay);

// Runs come in order of time: many in a row are of one date.
function dateOnce(dayNumber: number): string {
  if (dayNumber !== lastDay) [lastDay, lastDate] = [dayNumber, dateOfDayNumber(dayNumber)];
  return lastDate;
}
