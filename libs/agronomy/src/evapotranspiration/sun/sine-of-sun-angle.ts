import { radiansFromDegrees } from '@rillbook/units/angle.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Sine of the sun's angle above the horizon at an instant, sin β (ASCE-EWRI, Eq. 62 and D.6).
 *
 * sin β = sin φ·sin δ + cos φ·cos δ·cos ω
 *
 * @param latitude - Latitude, north positive. [°]
 * @param declination - Solar declination. [rad]
 * @param hourAngle - Solar time angle. [rad]
 * @returns Sine of the angle; below 0 when the sun is under the horizon. [–]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN` when not within -90 … 90 °; `ANGLE_OUT_OF_DOMAIN` when another angle is not finite.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D; equation numbers from memory.
 */
export function sineOfSunAngle(latitude: Quantity<'°'>, declination: Quantity<'rad'>, hourAngle: Quantity<'rad'>): number {
  if (!(Math.abs(latitude) <= 90)) throw new DomainError('LATITUDE_OUT_OF_DOMAIN', { latitude });
  if (!Number.isFinite(declination + hourAngle)) throw new DomainError('ANGLE_OUT_OF_DOMAIN', { declination, hourAngle });
  const phi = radiansFromDegrees(latitude);
  return Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.cos(hourAngle);
}
