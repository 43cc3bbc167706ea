import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Mean atmospheric pressure at an elevation (FAO-56, Eq. 7).
 *
 * P = 101.3 · ((293 - 0.0065·z) / 293)^5.26
 *
 * @param elevation - Height above sea level. [m]
 * @returns Atmospheric pressure of the standard atmosphere there. [kPa]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` when the elevation is beyond the formula (above 45 km).
 * @domain -500 … 9000 m
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 7; the same in ASCE-EWRI (2005), Eq. 3.
 * @example atmosphericPressure(metres(1800)) // 81.8, FAO-56 Example 2
 */
export function atmosphericPressure(elevation: Quantity<'m'>): Quantity<'kPa'> {
  return kilopascals(101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26);
}
