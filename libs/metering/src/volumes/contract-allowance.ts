import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * Water that a contract allows in a month, or in its first days: the month's entry by share of days.
 *
 * @param litresPerMonth - The contract's table, twelve months, January first. [L], one per month
 * @param month - Calendar month, 'YYYY-MM'. [code]
 * @param daysCovered - Days to date. [d]
 * @param daysInMonth - Days of the whole month. [d]
 * @returns Allowed volume of those days. [L]
 * @throws {DomainError} `CONTRACT_TABLE_INVALID` when the table has not twelve numbers of at least zero.
 */
export function contractAllowance(litresPerMonth: readonly number[], month: string, daysCovered: number, daysInMonth: number): number {
  const ofMonth = litresPerMonth[Number(month.slice(5, 7)) - 1];
  if (litresPerMonth.length !== 12 || ofMonth === undefined || !(ofMonth >= 0)) {
    throw new DomainError('CONTRACT_TABLE_INVALID', { litresPerMonth, month });
  }
  return (ofMonth * daysCovered) / daysInMonth;
}
