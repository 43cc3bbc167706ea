import { radiansFromDegrees } from '@rillbook/units/angle.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Below this the air mass formula is not meant to be used (ASCE-EWRI 2005, Appendix D, practice of its published programs). */
const LOWEST_SINE = 0.1;

/**
 * Sine of the day's mean angle of the sun above the horizon, weighted by radiation, sin β24 (ASCE-EWRI, Eq. D.5).
 *
 * sin β24 = sin(0.85 + 0.3·φ·sin(2π·J/365 - 1.39) - 0.42·φ²), at least 0.1
 *
 * @param latitude - Latitude, north positive. [°]
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns Sine of the angle. [–]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN` when not within -90 … 90 °; `DAY_OF_YEAR_OUT_OF_DOMAIN` when not within 1 … 366.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function sineOfMeanSunAngle(latitude: Quantity<'°'>, dayOfYear: number): number {
  if (Math.abs(latitude) > 90) throw new DomainError('LATITUDE_OUT_OF_DOMAIN', { latitude });
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) throw new DomainError('DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear });
  const phi = radiansFromDegrees(latitude);
  const season = Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
  return Math.max(LOWEST_SINE, Math.sin(0.85 + 0.3 * phi * season - 0.42 * phi ** 2));
}
