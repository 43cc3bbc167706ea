import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/** Share of Ra that reaches the ground on an overcast day, as (FAO-56, Eq. 35, where no calibration exists). */
const OVERCAST_SHARE = 0.25;

/** What a clear day adds to it, bs (FAO-56, Eq. 35, where no calibration exists). */
const SUNSHINE_SHARE = 0.5;

/**
 * Solar radiation from hours of sunshine, Rs (FAO-56, Eq. 35).
 *
 * Rs = (0.25 + 0.50·n/N) · Ra
 *
 * @param sunshineHours - Hours of bright sunshine. [h]
 * @param daylightHours - Hours between sunrise and sunset. [h]
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d]
 * @returns Solar radiation. [MJ/m2/d]
 * @throws {DomainError} `SUNSHINE_OUT_OF_DOMAIN` when there are no daylight hours or the sun shone longer than those.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 35.
 * @example solarRadiationFromSunshine(7.1, 10.9, 25.1) // 14.45, FAO-56 Example 10
 */
export function solarRadiationFromSunshine(
  sunshineHours: Quantity<'h'>,
  daylightHours: Quantity<'h'>,
  extraterrestrialRadiation: Quantity<'MJ/m2/d'>,
): Quantity<'MJ/m2/d'> {
  if (daylightHours <= 0 || sunshineHours < 0 || sunshineHours > daylightHours) {
    throw new DomainError('SUNSHINE_OUT_OF_DOMAIN', { sunshineHours, daylightHours });
  }
  return megajoulesPerSquareMetreDay((OVERCAST_SHARE + (SUNSHINE_SHARE * sunshineHours) / daylightHours) * extraterrestrialRadiation);
}
