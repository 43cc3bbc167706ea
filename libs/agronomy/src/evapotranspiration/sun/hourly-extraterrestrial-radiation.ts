import { radiansFromDegrees } from '@rillbook/units/angle.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import { inverseRelativeDistance } from './inverse-relative-distance.js';
import { solarDeclination } from './solar-declination.js';
import { sunlitHourAngles } from './sunlit-hour-angles.js';
import { sunsetHourAngle } from './sunset-hour-angle.js';

/** Solar constant, Gsc (ASCE-EWRI 2005, Eq. 48). [MJ/m2/h] */
const SOLAR_CONSTANT = 4.92;

/**
 * Extraterrestrial radiation of an hour, Ra (ASCE-EWRI, Eq. 48; FAO-56, Eq. 28).
 *
 * Ra = 12/π · Gsc · dr · ((ω2 - ω1)·sin φ·sin δ + cos φ·cos δ·(sin ω2 - sin ω1)), the angles limited to -ωs … ωs
 *
 * @param latitude - Latitude, north positive. [°]
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @param hourAngle - Solar time angle of the middle of the hour. [rad]
 * @returns Solar radiation on a horizontal surface above the atmosphere; 0 by night. [MJ/m2/h]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 28; ASCE-EWRI (2005), Eq. 48, number from memory.
 * @example 4.306 for Fallon, Nevada, 1 July, 10 to 11 h Pacific Standard Time
 */
export function hourlyExtraterrestrialRadiation(
  latitude: Quantity<'°'>,
  dayOfYear: number,
  hourAngle: Quantity<'rad'>,
): Quantity<'MJ/m2/h'> {
  const phi = radiansFromDegrees(latitude);
  const declination = solarDeclination(dayOfYear);
  const height = Math.sin(phi) * Math.sin(declination);
  const swing = Math.cos(phi) * Math.cos(declination);
  const geometry = sunlitHourAngles(hourAngle, sunsetHourAngle(latitude, declination)).reduce(
    (sum, { start, end }) => sum + (end - start) * height + swing * (Math.sin(end) - Math.sin(start)),
    0,
  );
  return megajoulesPerSquareMetreHour((12 / Math.PI) * SOLAR_CONSTANT * inverseRelativeDistance(dayOfYear) * Math.max(0, geometry));
}
