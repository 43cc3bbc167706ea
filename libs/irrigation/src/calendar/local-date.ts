import { DomainError } from '@rillbook/units/domain-error.js';

const MILLISECONDS_PER_DAY = 86_400_000;
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
  const [year, month, day] = [digits(date, 0, 4), digits(date, 5, 2), digits(date, 8, 2)];
  const isWritten = date.length === DATE_LETTERS && date.charCodeAt(4) === DASH && date.charCodeAt(7) === DASH;
  if (!(isWritten && isDate(year, month, day))) throw new DomainError('LOCAL_DATE_INVALID', { date });
  // From the first of March on the lengths of months follow one rule, and the leap day is the last of a year.
  const years = month > 2 ? year : year - 1;
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return 365 * years + Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400) + ofYear - MARCH_OF_YEAR_0;
}

/** Days from 1 March of the year 0 to 1970-01-01. */
const MARCH_OF_YEAR_0 = 719_468;
const DATE_LETTERS = 10;
const [DASH, DIGIT_0] = [45, 48];

// A whole number of so many digits; not a number where one is none.
function digits(text: string, from: number, count: number): number {
  let value = 0;
  for (let at = from; at < from + count; at += 1) {
    const digit = text.charCodeAt(at) - DIGIT_0;
    value = digit >= 0 && digit <= 9 ? 10 * value + digit : Number.NaN;
  }
  return value;
}

// Years before 100 are taken for others by the clocks of computers.
function isDate(year: number, month: number, day: number): boolean {
  return year >= 100 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/**
 * Calendar date of a day number.
 *
 * @param dayNumber - Whole days since 1970-01-01; a fraction is ignored. [d]
 * @returns Calendar date, 'YYYY-MM-DD'. [code]
 * @throws {DomainError} `LOCAL_DATE_INVALID` outside of the years 100 to 9999, whose dates are so written.
 */
export function dateOfDayNumber(dayNumber: number): string {
  const whole = Math.floor(dayNumber);
  if (!(whole >= FIRST_DAY && whole < AFTER_LAST_WRITTEN)) throw new DomainError('LOCAL_DATE_INVALID', { dayNumber });
  if (whole < FIRST_WRITTEN) return new Date(whole * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
  const days = whole + MARCH_OF_YEAR_0;
  const era = Math.floor(days / 146_097);
  const ofEra = days - 146_097 * era;
  const yearOfEra = Math.floor((ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearOfEra + 400 * era + (month <= 2 ? 1 : 0);
  return `${year}-${twoDigits(month)}-${twoDigits(ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1)}`;
}

/** Day numbers of 0100-01-01, 1000-01-01 and 10000-01-01: from the second on a year has four digits of its own. */
const [FIRST_DAY, FIRST_WRITTEN, AFTER_LAST_WRITTEN] = [-683_003, -354_285, 2_932_897];

const twoDigits = (value: number): string => (value < 10 ? `0${value}` : `${value}`);

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
 * @throws {DomainError} `LOCAL_DATE_INVALID` when not a whole number.
 */
export function weekdayOfDayNumber(dayNumber: number): number {
  if (!Number.isInteger(dayNumber)) throw new DomainError('LOCAL_DATE_INVALID', { dayNumber });
  return (((dayNumber + 3) % 7) + 7) % 7;
}
