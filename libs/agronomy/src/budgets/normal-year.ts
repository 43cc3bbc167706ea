import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Days of each month of a common year, January first. */
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * Normal evapotranspiration or rain of a year from its months.
 *
 * @param monthlyNormals - Twelve months, January first. [mm], one per month
 * @returns Their sum. [mm]
 * @throws {DomainError} `MONTHLY_NORMALS_INVALID` when there are not twelve of at least 0.
 */
export function yearlyNormal(monthlyNormals: readonly Quantity<'mm'>[]): Quantity<'mm'> {
  return millimetres(checked(monthlyNormals).reduce<number>((sum, month) => sum + month, 0));
}

/**
 * Normal evapotranspiration or rain of a day of a month.
 *
 * @param monthlyNormals - Twelve months, January first. [mm], one per month
 * @param month - Month of the year, 1 for January. [–]
 * @returns The month over its days, of a common year. [mm/d]
 * @throws {DomainError} `MONTHLY_NORMALS_INVALID` when there are not twelve of at least 0; `MONTH_OUT_OF_DOMAIN` when the month is not 1 to 12.
 */
export function dailyNormal(monthlyNormals: readonly Quantity<'mm'>[], month: number): Quantity<'mm'> {
  const days = DAYS_IN_MONTH[month - 1];
  const ofMonth = checked(monthlyNormals)[month - 1];
  if (days === undefined || ofMonth === undefined) throw new DomainError('MONTH_OUT_OF_DOMAIN', { month });
  return millimetres(ofMonth / days);
}

/**
 * Month of the highest normal: the peak month of a water budget.
 *
 * @param monthlyNormals - Twelve months, January first. [mm], one per month
 * @returns Month of the year, 1 for January; the first where several are the same. [–]
 * @throws {DomainError} `MONTHLY_NORMALS_INVALID` when there are not twelve of at least 0.
 */
export function peakMonth(monthlyNormals: readonly Quantity<'mm'>[]): number {
  return checked(monthlyNormals).indexOf(Math.max(...monthlyNormals) as Quantity<'mm'>) + 1;
}

function checked(monthlyNormals: readonly Quantity<'mm'>[]): readonly Quantity<'mm'>[] {
  if (monthlyNormals.length !== 12 || monthlyNormals.some((month) => !(month >= 0))) {
    throw new DomainError('MONTHLY_NORMALS_INVALID', { months: monthlyNormals.length });
  }
  return monthlyNormals;
}
