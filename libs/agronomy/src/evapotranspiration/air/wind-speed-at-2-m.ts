import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { metresPerSecond } from '@rillbook/units/speed.js';

/** Below this height the logarithmic profile has no meaning: the formula's own pole is at 0.095 m. */
const LOWEST_WIND_HEIGHT = 0.5;

/**
 * Wind speed at 2 m from another height (FAO-56, Eq. 47).
 *
 * u2 = uz · 4.87 / ln(67.8·z - 5.42)
 *
 * @param windSpeed - Wind speed measured at that height. [m/s]
 * @param windHeight - Height of the measurement above the ground. [m]
 * @returns Wind speed at 2 m above grass. [m/s]
 * @throws {DomainError} `WIND_OUT_OF_DOMAIN` when the wind is negative or the height is below 0.5 m.
 * @domain 0.5 m and above
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 47; the same in ASCE-EWRI (2005), Eq. 33.
 * @example windSpeedAt2M(metresPerSecond(3.2), metres(10)) // 2.4, FAO-56 Example 14
 */
export function windSpeedAt2M(windSpeed: Quantity<'m/s'>, windHeight: Quantity<'m'>): Quantity<'m/s'> {
  if (windSpeed < 0 || windHeight < LOWEST_WIND_HEIGHT) throw new DomainError('WIND_OUT_OF_DOMAIN', { windSpeed, windHeight });
  return metresPerSecond((windSpeed * 4.87) / Math.log(67.8 * windHeight - 5.42));
}
