import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { seasonalCorrection } from './seasonal-correction.js';

/** A place by its longitude, and the meridian that its clock follows. */
export type ClockedPlace = {
  /** Longitude, east positive. [°] */
  readonly longitude: Quantity<'°'>;
  /** Longitude of the centre of the time zone, east positive: 0 for a clock on UTC, -120 for Pacific Standard Time. [°] */
  readonly zoneLongitude: Quantity<'°'>;
};

/** Degrees that the sun travels in an hour; the standard prints its inverse as 0.06667. */
const DEGREES_PER_HOUR = 15;

/**
 * Solar time angle, ω (ASCE-EWRI, Eq. 55; FAO-56, Eq. 31).
 *
 * ω = π/12 · ((t + (L - Lz)/15 + Sc) - 12), longitudes east positive, brought within -π … π
 *
 * @param clockHour - Standard time of the clock, never summer time; below 0 and above 24 is the day before and after. [h]
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @param place - Its longitude and that of its clock. [any]
 * @returns Angle that the sun has travelled since it stood highest. [rad]
 * @throws {DomainError} `LONGITUDE_OUT_OF_DOMAIN` when not within -180 … 180 °; `CLOCK_HOUR_OUT_OF_DOMAIN` when not finite;
 * `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 31; ASCE-EWRI (2005), Eq. 55, number from memory.
 * @example -0.5176 for 18 h UTC on 1 July at 118.77388° W, Fallon, Nevada
 */
export function solarHourAngle(clockHour: number, dayOfYear: number, place: ClockedPlace): Quantity<'rad'> {
  const { longitude, zoneLongitude } = place;
  if (Math.abs(longitude) > 180 || Math.abs(zoneLongitude) > 180) throw new DomainError('LONGITUDE_OUT_OF_DOMAIN', { ...place });
  const solarTime = clockHour + (longitude - zoneLongitude) / DEGREES_PER_HOUR + seasonalCorrection(dayOfYear);
  const angle = (Math.PI / 12) * (solarTime - 12);
  return finiteQuantity(angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI)), 'CLOCK_HOUR_OUT_OF_DOMAIN');
}
