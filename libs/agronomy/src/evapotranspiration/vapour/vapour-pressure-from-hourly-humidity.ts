import type { Quantity } from '@rillbook/units/quantity.js';
import { vapourPressureFromMeanHumidity } from './vapour-pressure-from-humidity.js';

/**
 * Actual vapour pressure of an hour from its mean relative humidity, ea (FAO-56, Eq. 54; ASCE-EWRI, Eq. 41).
 *
 * ea = e°(T) · RH/100
 *
 * @param airTemperature - Mean air temperature of the hour. [°C]
 * @param meanHumidity - Mean relative humidity of the hour. [%]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when the humidity is not within 0 … 105 %.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 54; ASCE-EWRI (2005), Eq. 41, number from memory.
 * @example 3.445 for 38 °C and 52 %, FAO-56 Example 19
 */
export function vapourPressureFromHourlyHumidity(airTemperature: Quantity<'°C'>, meanHumidity: number): Quantity<'kPa'> {
  return vapourPressureFromMeanHumidity({ maximumTemperature: airTemperature, minimumTemperature: airTemperature }, meanHumidity);
}
