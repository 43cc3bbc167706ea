import { radians } from '@rillbook/units/angle.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** A stretch of the sun's way, as angles of solar time. */
export type HourAngles = { readonly start: Quantity<'rad'>; readonly end: Quantity<'rad'> };

/** Half of what the sun travels in an hour, π/24. [rad] */
const HALF_HOUR = Math.PI / 24;

/** The sun's whole way of a day. [rad] */
const DAY = 2 * Math.PI;

/**
 * The part of an hour in which the sun is up, ω1 and ω2 limited to the sunrise and sunset angles (ASCE-EWRI, Eq. 53, 54 and 56).
 *
 * ω1 = ω - π/24 and ω2 = ω + π/24, both within -ωs … ωs
 *
 * Near the poles an hour about midnight may see the end of one day and the start of the next: then there are two stretches.
 *
 * @param hourAngle - Solar time angle of the middle of the hour. [rad]
 * @param sunsetHourAngle - Sunset hour angle, ωs. [rad]
 * @returns The sunlit stretches: none by night, as a rule one. [rad]
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 53 to 56; equation numbers from memory.
 */
export function sunlitHourAngles(hourAngle: Quantity<'rad'>, sunsetHourAngle: Quantity<'rad'>): readonly HourAngles[] {
  return [-DAY, 0, DAY].flatMap((turn) => {
    const start = Math.max(hourAngle + turn - HALF_HOUR, -sunsetHourAngle);
    const end = Math.min(hourAngle + turn + HALF_HOUR, sunsetHourAngle);
    return start < end ? [{ start: radians(start), end: radians(end) }] : [];
  });
}
