import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { saturationVapourPressure } from './saturation-vapour-pressure.js';

/**
 * Mean saturation vapour pressure of a day, es (FAO-56, Eq. 12).
 *
 * es = (e°(Tmax) + e°(Tmin)) / 2
 *
 * @param maximumTemperature - Highest air temperature of the day. [°C]
 * @param minimumTemperature - Lowest air temperature of the day. [°C]
 * @returns Mean of the two saturation pressures, higher than the one at the mean temperature. [kPa]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 12.
 * @example meanSaturationVapourPressure(celsius(24.5), celsius(15)) // 2.39, FAO-56 Example 3
 */
export function meanSaturationVapourPressure(maximumTemperature: Quantity<'°C'>, minimumTemperature: Quantity<'°C'>): Quantity<'kPa'> {
  return kilopascals((saturationVapourPressure(maximumTemperature) + saturationVapourPressure(minimumTemperature)) / 2);
}
