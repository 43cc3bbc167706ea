import type { Quantity } from '@rillbook/units/quantity.js';
import { celsius } from '@rillbook/units/temperature.js';

/**
 * Mean daily air temperature (FAO-56, Eq. 9).
 *
 * T = (Tmax + Tmin) / 2
 *
 * @param maximumTemperature - Highest air temperature of the day. [°C]
 * @param minimumTemperature - Lowest air temperature of the day. [°C]
 * @returns Mean of the two. [°C]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 9.
 * @example meanTemperature(celsius(34.8), celsius(25.6)) // 30.2, FAO-56 Example 17
 */
export function meanTemperature(maximumTemperature: Quantity<'°C'>, minimumTemperature: Quantity<'°C'>): Quantity<'°C'> {
  return celsius((maximumTemperature + minimumTemperature) / 2);
}
