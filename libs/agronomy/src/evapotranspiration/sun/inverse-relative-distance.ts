import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * Inverse relative distance from earth to sun, dr (FAO-56, Eq. 23).
 *
 * dr = 1 + 0.033 · cos(2π·J / 365)
 *
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns Inverse relative distance, squared. [–]
 * @throws {DomainError} `DAY_OF_YEAR_OUT_OF_DOMAIN` when not within 1 … 366.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 23.
 * @example inverseRelativeDistance(246) // 0.985, FAO-56 Example 8
 */
export function inverseRelativeDistance(dayOfYear: number): number {
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) throw new DomainError('DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear });
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
}
