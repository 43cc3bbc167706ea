import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/** Share of light that the reference grass gives back, α (FAO-56, Eq. 38). */
const ALBEDO = 0.23;

/**
 * Net short-wave radiation, Rns (FAO-56, Eq. 38).
 *
 * Rns = (1 - 0.23) · Rs
 *
 * @param solarRadiation - Solar radiation. [MJ/m2/d]
 * @returns What the reference grass keeps of it. [MJ/m2/d]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 38.
 * @example netShortwaveRadiation(megajoulesPerSquareMetreDay(14.5)) // 11.1, FAO-56 Example 12
 */
export function netShortwaveRadiation(solarRadiation: Quantity<'MJ/m2/d'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay((1 - ALBEDO) * solarRadiation);
}

/**
 * Net radiation, Rn (FAO-56, Eq. 40).
 *
 * Rn = Rns - Rnl
 *
 * @param netShortwaveRadiation - Light kept. [MJ/m2/d]
 * @param netLongwaveRadiation - Heat lost to the sky. [MJ/m2/d]
 * @returns What is left to evaporate water and warm the air. [MJ/m2/d]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 40.
 * @example netRadiation(megajoulesPerSquareMetreDay(16.9), megajoulesPerSquareMetreDay(3)) // 13.9, FAO-56 Example 16
 */
export function netRadiation(netShortwaveRadiation: Quantity<'MJ/m2/d'>, netLongwaveRadiation: Quantity<'MJ/m2/d'>): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(netShortwaveRadiation - netLongwaveRadiation);
}
