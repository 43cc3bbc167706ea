import { DomainError } from '@rillbook/units/domain-error.js';

/** Days before the first of each month in a common year. */
const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;

/**
 * Day of the year, J (FAO-56, Annex 2, Table 2.5).
 *
 * @param date - The calendar day, as YYYY-MM-DD. [code]
 * @returns 1 for 1 January, 366 for 31 December of a leap year. [–]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when it is no calendar day so written.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Annex 2, Table 2.5.
 * @example dayOfYear('2015-07-01') // 182
 */
export function dayOfYear(date: string): number {
  const [, year, month, day] = (/^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined) throw new DomainError('DATE_OUT_OF_DOMAIN', { date });
  const before = DAYS_BEFORE_MONTH[month - 1];
  if (before === undefined || day < 1 || day > daysIn(month, year)) throw new DomainError('DATE_OUT_OF_DOMAIN', { date });
  return before + (month > 2 && isLeap(year) ? 1 : 0) + day;
}

function daysIn(month: number, year: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}
