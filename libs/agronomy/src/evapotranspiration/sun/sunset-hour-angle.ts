import { radiansFromDegrees } from '@rillbook/units/angle.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/**
 * Sunset hour angle, ωs (FAO-56, Eq. 25).
 *
 * ωs = arccos(-tan φ · tan δ), the argument limited to -1 … 1
 *
 * @param latitude - Latitude, north positive. [°]
 * @param declination - Solar declination. [rad]
 * @returns Half the angle that the sun travels over the horizon: 0 in polar night, π in polar day. [rad]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN` when not within -90 … 90 °.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 25.
 * @example sunsetHourAngle(degrees(-20), solarDeclination(246)) // 1.527, FAO-56 Example 8
 */
export function sunsetHourAngle(latitude: Quantity<'°'>, declination: Quantity<'rad'>): Quantity<'rad'> {
  if (Math.abs(latitude) > 90) throw new DomainError('LATITUDE_OUT_OF_DOMAIN', { latitude });
  const argument = -Math.tan(radiansFromDegrees(latitude)) * Math.tan(declination);
  return finiteQuantity(Math.acos(Math.min(1, Math.max(-1, argument))), 'LATITUDE_OUT_OF_DOMAIN');
}
