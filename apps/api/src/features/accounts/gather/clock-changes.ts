import { Temporal } from 'temporal-polyfill';
import type { ClockChange } from '@rillbook/irrigation/calendar/clock-change.js';
import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';

const NS_PER_MINUTE = 60e9;
const known = new Map<string, readonly ClockChange[]>();

function transitionsOf(timeZone: string, year: number): readonly ClockChange[] {
  const key = `${timeZone} ${year}`;
  const present = known.get(key);
  if (present) return present;
  const changes: ClockChange[] = [];
  let at = Temporal.ZonedDateTime.from({ timeZone, year, month: 1, day: 1 });
  for (let next = at.getTimeZoneTransition('next'); next && next.year === year; next = at.getTimeZoneTransition('next')) {
    const before = next.subtract({ nanoseconds: 1 });
    const shiftMinutes = (next.offsetNanoseconds - before.offsetNanoseconds) / NS_PER_MINUTE;
    // The wall time at which the hands are moved, as shown before the change.
    const wall = before.toPlainDateTime().add({ nanoseconds: 1 });
    if (shiftMinutes !== 0) changes.push({ date: wall.toPlainDate().toString(), atMinute: wall.hour * 60 + wall.minute, shiftMinutes });
    at = next;
  }
  known.set(key, changes);
  return changes;
}

/** The changes of a place's clock between two day numbers, both included. */
export function clockChanges(timeZone: string, from: number, until: number): ClockChange[] {
  const [first, last] = [dateOfDayNumber(from), dateOfDayNumber(until)];
  const [firstYear, lastYear] = [Number(first.slice(0, 4)), Number(last.slice(0, 4))];
  const years = Array.from({ length: lastYear - firstYear + 1 }, (_, at) => firstYear + at);
  return years.flatMap((year) => transitionsOf(timeZone, year)).filter((change) => change.date >= first && change.date <= last);
}
