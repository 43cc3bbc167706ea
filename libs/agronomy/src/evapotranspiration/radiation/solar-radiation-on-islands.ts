import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/**
 * Solar radiation on small islands without any measurement, Rs (FAO-56, Eq. 51).
 *
 * Rs = 0.7·Ra - 4
 *
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d]
 * @returns Solar radiation, for islands of at most 20 km below 100 m of height; monthly values only. [MJ/m2/d]
 * @domain Ra above 5.7 MJ/m²/d; below it the result is 0
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 51.
 */
export function solarRadiationOnIslands(extraterrestrialRadiation: Quantity<'MJ/m2/d'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(Math.max(0, 0.7 * extraterrestrialRadiation - 4));
}
