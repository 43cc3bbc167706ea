import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * Percent that a controller applies in a month: the percent adjust times the month's own percent, for timers that hold twelve.
 *
 * @param adjustPercent - Percent adjust of the program or controller. [%]
 * @param monthlyAdjustPercent - Twelve percents, January first, or null where the controller has none. [%], one per month
 * @param monthIndex - Month of the start, 0 for January. [–]
 * @returns Percent of the minutes that run. [%]
 * @throws {DomainError} `MONTHLY_ADJUST_INVALID` when the table has not twelve numbers of at least zero.
 */
export function percentInForce(adjustPercent: number, monthlyAdjustPercent: readonly number[] | null, monthIndex: number): number {
  if (monthlyAdjustPercent === null) return adjustPercent;
  const ofMonth = monthlyAdjustPercent[monthIndex];
  if (monthlyAdjustPercent.length !== 12 || ofMonth === undefined || !(ofMonth >= 0)) {
    throw new DomainError('MONTHLY_ADJUST_INVALID', { monthlyAdjustPercent, monthIndex });
  }
  return (adjustPercent * ofMonth) / 100;
}
