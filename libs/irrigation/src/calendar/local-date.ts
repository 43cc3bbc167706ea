import { DomainError } from '@rillbook/units/domain-error.js';

const MILLISECONDS_PER_DAY = 86_400_000;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTH = /^(\d{4})-(0[1-9]|1[0-2])$/;

/**
 * Day number of a calendar date: whole days since 1970-01-01.
 *
 * @param date - Calendar date, 'YYYY-MM-DD'. [code]
 * @returns Whole days since 1970-01-01 on the same calendar. [d]
 * @throws {DomainError} `LOCAL_DATE_INVALID` when it is no date of the calendar.
 * @example dayNumberOfDate('1970-01-02') // 1
 */
export function dayNumberOfDate(date: string): number {
  const match = DATE.exec(date);
  if (!match) throw new DomainError('LOCAL_DATE_INVALID', { date });
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const midnight = new Date(Date.UTC(year, month - 1, day));
  // A day that the month has not rolls over into the next; years before 100 are taken for others.
  if (midnight.getUTCDate() !== day || midnight.getUTCMonth() !== month - 1 || midnight.getUTCFullYear() !== year)
    throw new DomainError('LOCAL_DATE_INVALID', { date });
  return midnight.getTime() / MILLISECONDS_PER_DAY;
}

/**
 * Calendar date of a day number.
 *
 * @param dayNumber - Whole days since 1970-01-01; a fraction is ignored. [d]
 * @returns Calendar date, 'YYYY-MM-DD'. [code]
 */
export function dateOfDayNumber(dayNumber: number): string {
  return new Date(Math.floor(dayNumber) * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
}

/**
 * First day and number of days of a calendar month.
 *
 * @param month - Calendar month, 'YYYY-MM'. [code]
 * @returns Day number of the first, and how many days there are. [d]
 * @throws {DomainError} `MONTH_INVALID` when it is no month.
 */
export function daysOfMonth(month: string): { readonly firstDay: number; readonly days: number } {
  const match = MONTH.exec(month);
  if (!match) throw new DomainError('MONTH_INVALID', { month });
  const firstDay = dayNumberOfDate(`${month}-01`);
  return { firstDay, days: new Date(Date.UTC(Number(match[1]), Number(match[2]), 0)).getUTCDate() };
}

/**
 * Weekday of a day number, Monday first.
 *
 * @param dayNumber - Whole days since 1970-01-01, a Thursday. [d]
 * @returns 0 for Monday to 6 for Sunday. [–]
 */
export function weekdayOfDayNumber(dayNumber: number): number {
  return (((dayNumber + 3) % 7) + 7) % 7;
}
