import { DomainError } from '@rillbook/units/domain-error.js';
import { dateOfDayNumber, dayNumberOfDate, weekdayOfDayNumber } from '../../calendar/local-date.js';
import type { ProgramDays, Weekday } from '../settings-fact.js';

const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/**
 * Whether a program starts on a local date. Odd and even are days of the month (the 31st and the 1st are both odd).
 *
 * @param days - The days that the program is set to. [code]
 * @param dayNumber - Local date, whole days since 1970-01-01. [d]
 * @returns True when its starts happen on that date. [–]
 * @throws {DomainError} `PROGRAM_DAYS_INVALID` when an interval is not a whole number of days above zero.
 */
export function programStartsOn(days: ProgramDays, dayNumber: number): boolean {
  switch (days.kind) {
    case 'daily':
      return true;
    case 'weekdays':
      return days.weekdays.includes(WEEKDAYS[weekdayOfDayNumber(dayNumber)] as Weekday);
    case 'odd':
      return dayOfMonth(dayNumber) % 2 === 1;
    case 'even':
      return dayOfMonth(dayNumber) % 2 === 0;
    case 'every': {
      if (!(Number.isInteger(days.everyDays) && days.everyDays > 0))
        throw new DomainError('PROGRAM_DAYS_INVALID', { everyDays: days.everyDays });
      const since = dayNumber - dayNumberOfDate(days.from);
      return since >= 0 && since % days.everyDays === 0;
    }
  }
}

function dayOfMonth(dayNumber: number): number {
  return Number(dateOfDayNumber(dayNumber).slice(8));
}
