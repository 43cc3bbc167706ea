import { DomainError } from '@rillbook/units/domain-error.js';

const DAY_MS = 86_400_000;

/** Day numbers of 0000-01-01 and 10000-01-01. */
const [FIRST_DAY, AFTER_LAST_DAY] = [-719_528, 2_932_897];

/**
 * Number of a calendar day, so that neighbouring days differ by one.
 *
 * @param date - The calendar day, as YYYY-MM-DD. [code]
 * @returns Days since 1 January 1970, which is 0. [d]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when it is no calendar day so written.
 * @example dayNumber('1970-01-02') // 1
 */
export function dayNumber(date: string): number {
  const number = Date.parse(`${date}T00:00:00Z`) / DAY_MS;
  if (!Number.isInteger(number) || dateOfDay(number) !== date) throw new DomainError('DATE_OUT_OF_DOMAIN', { date });
  return number;
}

/**
 * The calendar day of a number.
 *
 * @param day - Days since 1 January 1970. [d]
 * @returns The day, as YYYY-MM-DD. [code]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` outside of the years 0 to 9999, whose days are so written, or when not finite.
 * @example dateOfDay(1) // '1970-01-02'
 */
export function dateOfDay(day: number): string {
  if (!(day >= FIRST_DAY && day < AFTER_LAST_DAY)) throw new DomainError('DATE_OUT_OF_DOMAIN', { day });
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/**
 * Month of a calendar day.
 *
 * @param date - The calendar day, as YYYY-MM-DD. [code]
 * @returns 1 for January to 12 for December. [–]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when no month is so written in it.
 * @example monthOfDate('2015-04-22') // 4
 */
export function monthOfDate(date: string): number {
  const month = Number(/^\d{4}-(\d{2})-/.exec(date)?.[1]);
  if (!(month >= 1 && month <= 12)) throw new DomainError('DATE_OUT_OF_DOMAIN', { date });
  return month;
}
