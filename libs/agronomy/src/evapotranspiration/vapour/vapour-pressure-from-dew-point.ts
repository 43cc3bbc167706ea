import type { Quantity } from '@rillbook/units/quantity.js';
import { saturationVapourPressure } from './saturation-vapour-pressure.js';

/**
 * Actual vapour pressure from the dew point, ea (FAO-56, Eq. 14).
 *
 * ea = e°(Tdew)
 *
 * @param dewPoint - Temperature to which the air must cool to be saturated. [°C]
 * @returns Actual vapour pressure. [kPa]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 14.
 * @example vapourPressureFromDewPoint(celsius(14.8)) // 1.68, FAO-56 Example 20
 */
export function vapourPressureFromDewPoint(dewPoint: Quantity<'°C'>): Quantity<'kPa'> {
  return saturationVapourPressure(dewPoint);
}
