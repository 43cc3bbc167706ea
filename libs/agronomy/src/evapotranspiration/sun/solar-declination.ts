import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/**
 * Solar declination, δ (FAO-56, Eq. 24).
 *
 * δ = 0.409 · sin(2π·J / 365 - 1.39)
 *
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns Angle of the sun above the equator. [rad]
 * @throws {DomainError} `DAY_OF_YEAR_OUT_OF_DOMAIN` when not within 1 … 366.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 24.
 * @example solarDeclination(246) // 0.120, FAO-56 Example 8
 */
export function solarDeclination(dayOfYear: number): Quantity<'rad'> {
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) throw new DomainError('DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear });
  return finiteQuantity(0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39), 'DAY_OF_YEAR_OUT_OF_DOMAIN');
}
