import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Saturation vapour pressure over water (FAO-56, Eq. 11).
 *
 * e°(T) = 0.6108 · exp(17.27·T / (T + 237.3))
 *
 * @param airTemperature - Air temperature at screen height. [°C]
 * @returns Pressure at which air of that temperature is saturated. [kPa]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` at the formula's pole (-237.3 °C) and just below it.
 * @domain -40 … 60 °C
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 11.
 * @example saturationVapourPressure(celsius(24.5)) // 3.075, FAO-56 Example 3
 */
export function saturationVapourPressure(airTemperature: Quantity<'°C'>): Quantity<'kPa'> {
  return kilopascals(0.6108 * Math.exp((17.27 * airTemperature) / (airTemperature + 237.3)));
}
