import { DomainError } from '@rillbook/units/domain-error.js';

/** The two kinds of turf, in the import folder's words. */
export type Turf = 'turf cool-season' | 'turf warm-season';

/** January first; warm-season is bermuda grass. From memory. */
const BY_TURF: Readonly<Record<Turf, readonly number[]>> = {
  'turf cool-season': [0.61, 0.69, 0.77, 0.84, 0.9, 0.93, 0.93, 0.89, 0.83, 0.75, 0.67, 0.59],
  'turf warm-season': [0.52, 0.64, 0.7, 0.73, 0.73, 0.71, 0.69, 0.67, 0.64, 0.6, 0.57, 0.53],
};

/**
 * Crop coefficient of mown turf by month, Kc: a variant of the one plant factor for the whole year.
 *
 * @param turf - The kind of turf. [code]
 * @param month - Month of the year, 1 for January. [–]
 * @returns Share of ETo that well-watered turf uses in that month. [–]
 * @throws {DomainError} `MONTH_OUT_OF_DOMAIN` when the month is not a whole number from 1 to 12.
 * @source University of California, turfgrass crop coefficients; from memory.
 */
export function monthlyTurfCoefficient(turf: Turf, month: number): number {
  const found = BY_TURF[turf][month - 1];
  if (found === undefined) throw new DomainError('MONTH_OUT_OF_DOMAIN', { month });
  return found;
}
