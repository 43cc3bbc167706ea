import { DomainError } from '@rillbook/units/domain-error.js';

const DAY_MS = 86_400_000;

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
 * @example dateOfDay(1) // '1970-01-02'
 */
export function dateOfDay(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}
