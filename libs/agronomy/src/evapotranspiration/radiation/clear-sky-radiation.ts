import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/**
 * Clear-sky radiation from elevation alone, Rso (FAO-56, Eq. 37).
 *
 * Rso = (0.75 + 2·10⁻⁵·z) · Ra
 *
 * @param elevation - Height above sea level. [m]
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d]
 * @returns Solar radiation of a day without clouds. [MJ/m2/d]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 37; the same in ASCE-EWRI (2005), Eq. 19.
 * @example clearSkyRadiation(metres(100), megajoulesPerSquareMetreDay(41.09)) // 30.90, FAO-56 Example 18
 */
export function clearSkyRadiation(elevation: Quantity<'m'>, extraterrestrialRadiation: Quantity<'MJ/m2/d'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay((0.75 + 2e-5 * elevation) * extraterrestrialRadiation);
}
