import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/**
 * Soil heat flux of a month between two known ones, G (FAO-56, Eq. 43). Of a day it is 0 (Eq. 42).
 *
 * G = 0.07 · (T(i+1) - T(i-1))
 *
 * @param nextMonthTemperature - Mean air temperature of the month after. [°C]
 * @param previousMonthTemperature - Mean air temperature of the month before. [°C]
 * @returns Heat that goes into the soil; negative when it comes out. [MJ/m2/d]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 43.
 * @example monthlySoilHeatFlux(celsius(18.8), celsius(14.1)) // 0.33, FAO-56 Example 13
 */
export function monthlySoilHeatFlux(nextMonthTemperature: Quantity<'°C'>, previousMonthTemperature: Quantity<'°C'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(0.07 * (nextMonthTemperature - previousMonthTemperature));
}

/**
 * Soil heat flux of a month whose next is not known yet, G (FAO-56, Eq. 44).
 *
 * G = 0.14 · (T(i) - T(i-1))
 *
 * @param meanTemperature - Mean air temperature of the month. [°C]
 * @param previousMonthTemperature - Mean air temperature of the month before. [°C]
 * @returns Heat that goes into the soil; negative when it comes out. [MJ/m2/d]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 44.
 * @example currentMonthSoilHeatFlux(celsius(30.2), celsius(29.2)) // 0.14, FAO-56 Example 17
 */
export function currentMonthSoilHeatFlux(meanTemperature: Quantity<'°C'>, previousMonthTemperature: Quantity<'°C'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(0.14 * (meanTemperature - previousMonthTemperature));
}
