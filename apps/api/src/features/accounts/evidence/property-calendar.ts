import type { ClockChange } from '@rillbook/irrigation/calendar/clock-change.js';
import { elapsedMinutes } from '@rillbook/irrigation/calendar/elapsed-minutes.js';
import { clockChanges } from '../gather/clock-changes.js';

/** Whole local days of a property, one after the other. */
export interface DaySpan {
  /** day number */
  readonly firstDay: number;
  readonly days: number;
}

/** A span of days with the elapsed minutes of its midnights: one more than there are days. */
export interface PropertyCalendar extends DaySpan {
  readonly clockChanges: readonly ClockChange[];
  readonly midnights: Float64Array;
}

/** A start of the day before may reach into the first day, and one of its queue from the day before that. */
const DAYS_BEFORE = 3;

/** The calendar of a place over some days. */
export function propertyCalendar(timeZone: string, { firstDay, days }: DaySpan): PropertyCalendar {
  const changes = clockChanges(timeZone, firstDay - DAYS_BEFORE, firstDay + days + 1);
  const midnights = new Float64Array(days + 1);
  for (let day = 0; day <= days; day++) midnights[day] = elapsedMinutes(firstDay + day, 0, changes);
  return { firstDay, days, clockChanges: changes, midnights };
}
