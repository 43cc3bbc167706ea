import { DomainError } from '@rillbook/units/domain-error.js';
import type { ClockChange } from './clock-change.js';
import { dayNumberOfDate } from './local-date.js';

const MINUTES_PER_DAY = 1440;
const WALL_TIME = /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/;

/**
 * Elapsed minutes of a wall time: a line without gaps or repeats, on which an hour is always sixty minutes.
 *
 * A wall time that the clock skips is the first instant after; one that occurs twice is the first occurrence.
 *
 * @param dayNumber - Local date, whole days since 1970-01-01. [d]
 * @param minute - Minutes on the wall clock after local midnight. [min]
 * @param clockChanges - The place's changes of clock, in order of time. [code]
 * @returns Minutes since 1970-01-01 00:00 as if the clock had stood as before the first change. [min]
 */
export function elapsedMinutes(dayNumber: number, minute: number, clockChanges: readonly ClockChange[]): number {
  const wall = dayNumber * MINUTES_PER_DAY + minute;
  if (clockChanges.length === 0) return wall;
  const times = timesOf(clockChanges);
  let shift = 0;
  for (let at = 0; at < times.length; at += 1) {
    const [changedAt, { shiftMinutes }] = [times[at] as number, clockChanges[at] as ClockChange];
    if (wall < changedAt) break;
    if (shiftMinutes > 0 && wall < changedAt + shiftMinutes) return changedAt - shift;
    shift += shiftMinutes;
  }
  return wall - shift;
}

let lastChanges: readonly ClockChange[] = [];
let lastTimes: readonly number[] = [];

// Wall minutes at which a place's clock is changed: whoever asks of one place asks again.
function timesOf(clockChanges: readonly ClockChange[]): readonly number[] {
  if (clockChanges !== lastChanges) {
    lastTimes = clockChanges.map(({ date, atMinute }) => dayNumberOfDate(date) * MINUTES_PER_DAY + atMinute);
    lastChanges = clockChanges;
  }
  return lastTimes;
}

/**
 * Elapsed minutes of a wall time written as text.
 *
 * @param wallTime - Property wall time, 'YYYY-MM-DDTHH:mm' (seconds may follow). [code]
 * @param clockChanges - The place's changes of clock, in order of time. [code]
 * @returns Minutes on the line of `elapsedMinutes`. [min]
 * @throws {DomainError} `WALL_TIME_INVALID` when it cannot be read.
 */
export function elapsedMinutesOfWallTime(wallTime: string, clockChanges: readonly ClockChange[]): number {
  const match = WALL_TIME.exec(wallTime);
  if (!match?.[1]) throw new DomainError('WALL_TIME_INVALID', { wallTime });
  const minute = Number(match[2]) * 60 + Number(match[3]) + Number(match[4] ?? 0) / 60;
  return elapsedMinutes(dayNumberOfDate(match[1]), minute, clockChanges);
}

/**
 * Local day number of an instant: the whole local date plus the elapsed share of that day's real length.
 *
 * @param date - Local date of the instant, 'YYYY-MM-DD'. [code]
 * @param minutesSinceMidnight - Real minutes elapsed since that local midnight. [min]
 * @param minutesInDay - Real length of that local day: 1380, 1440 or 1500 where clocks move by an hour. [min]
 * @returns Days since 1970-01-01 with the elapsed share as fraction. [d]
 * @throws {DomainError} `LOCAL_DAY_INVALID` when the minutes do not fit into the day.
 * @example localDayNumber('1970-01-02', 690, 1380) // 1.5
 */
export function localDayNumber(date: string, minutesSinceMidnight: number, minutesInDay: number): number {
  if (!(minutesInDay > 0 && minutesSinceMidnight >= 0 && minutesSinceMidnight <= minutesInDay)) {
    throw new DomainError('LOCAL_DAY_INVALID', { date, minutesSinceMidnight, minutesInDay });
  }
  return dayNumberOfDate(date) + minutesSinceMidnight / minutesInDay;
}
