import { DomainError } from '@rillbook/units/domain-error.js';
import type { ControllerTraits } from '../controller-traits.js';

/**
 * Percent that a controller applies in a month: the percent adjust times the month's own percent, for timers that hold twelve.
 *
 * A percent adjust above what the controller holds is the most that it holds; the month's own percent is not bounded by it.
 *
 * @param adjustPercent - Percent adjust of the program or controller. [%]
 * @param traits - Twelve percents, January first (null where the controller has none), and the largest percent adjust (null: no bound). [%]
 * @param monthIndex - Month of the start, 0 for January. [–]
 * @returns Percent of the minutes that run. [%]
 * @throws {DomainError} `MONTHLY_ADJUST_INVALID` when the table has not twelve numbers of at least zero.
 */
export function percentInForce(
  adjustPercent: number,
  traits: Pick<ControllerTraits, 'monthlyAdjustPercent' | 'maxAdjustPercent'>,
  monthIndex: number,
): number {
  const { monthlyAdjustPercent } = traits;
  const percent = Math.min(adjustPercent, traits.maxAdjustPercent ?? Number.POSITIVE_INFINITY);
  if (monthlyAdjustPercent === null) return percent;
  const ofMonth = monthlyAdjustPercent[monthIndex];
  if (monthlyAdjustPercent.length !== 12 || ofMonth === undefined || !(ofMonth >= 0)) {
    throw new DomainError('MONTHLY_ADJUST_INVALID', { monthlyAdjustPercent, monthIndex });
  }
  return (percent * ofMonth) / 100;
}
