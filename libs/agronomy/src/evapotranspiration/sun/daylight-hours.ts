import type { Quantity } from '@rillbook/units/quantity.js';
import { finiteQuantity } from '@rillbook/units/quantity.js';
import { solarDeclination } from './solar-declination.js';
import { sunsetHourAngle } from './sunset-hour-angle.js';

/**
 * Daylight hours, N (FAO-56, Eq. 34).
 *
 * N = 24/π · ωs
 *
 * @param latitude - Latitude, north positive. [°]
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns Time between sunrise and sunset. [h]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN` as those of the sunset hour angle and declination.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 34.
 * @example daylightHours(degrees(-20), 246) // 11.7, FAO-56 Example 9
 */
export function daylightHours(latitude: Quantity<'°'>, dayOfYear: number): Quantity<'h'> {
  return finiteQuantity((24 / Math.PI) * sunsetHourAngle(latitude, solarDeclination(dayOfYear)), 'LATITUDE_OUT_OF_DOMAIN');
}
