import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import type { RadiationUnit } from './radiation-unit.js';

/**
 * Clear-sky radiation from elevation alone, Rso (FAO-56, Eq. 37).
 *
 * Rso = (0.75 + 2·10⁻⁵·z) · Ra
 *
 * @param elevation - Height above sea level. [m]
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d or MJ/m2/h]
 * @returns Solar radiation of a day or an hour without clouds. [MJ/m2/d or MJ/m2/h]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 37; the same in ASCE-EWRI (2005), Eq. 19.
 * @example clearSkyRadiation(metres(100), megajoulesPerSquareMetreDay(41.09)) // 30.90, FAO-56 Example 18
 */
export function clearSkyRadiation<Unit extends RadiationUnit>(
  elevation: Quantity<'m'>,
  extraterrestrialRadiation: Quantity<Unit>,
): Quantity<Unit> {
  return finiteQuantity((0.75 + 2e-5 * elevation) * extraterrestrialRadiation, 'RADIATION_OUT_OF_DOMAIN');
}
