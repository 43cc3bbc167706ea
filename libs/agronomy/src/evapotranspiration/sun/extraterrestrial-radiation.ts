import { radiansFromDegrees } from '@rillbook/units/angle.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { inverseRelativeDistance } from './inverse-relative-distance.js';
import { solarDeclination } from './solar-declination.js';
import { sunsetHourAngle } from './sunset-hour-angle.js';

/** Solar constant, Gsc (FAO-56, Eq. 21): 0.0820 MJ/m²/min, which is the 4.92 MJ/m²/h of ASCE-EWRI (2005), Eq. 21. */
const SOLAR_CONSTANT = 0.082;

/**
 * Extraterrestrial radiation of a day, Ra (FAO-56, Eq. 21).
 *
 * Ra = 24·60/π · Gsc · dr · (ωs·sin φ·sin δ + cos φ·cos δ·sin ωs)
 *
 * @param latitude - Latitude, north positive. [°]
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns Solar radiation on a horizontal surface above the atmosphere; 0 in polar night. [MJ/m2/d]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN` when not within -90 … 90 °; `DAY_OF_YEAR_OUT_OF_DOMAIN` when not within 1 … 366.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 21.
 * @example extraterrestrialRadiation(degrees(-20), 246) // 32.2, FAO-56 Example 8
 */
export function extraterrestrialRadiation(latitude: Quantity<'°'>, dayOfYear: number): Quantity<'MJ/m2/d'> {
  const phi = radiansFromDegrees(latitude);
  const declination = solarDeclination(dayOfYear);
  const sunset = sunsetHourAngle(latitude, declination);
  const geometry = sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  return megajoulesPerSquareMetreDay(((24 * 60) / Math.PI) * SOLAR_CONSTANT * inverseRelativeDistance(dayOfYear) * Math.max(0, geometry));
}
