import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import type { RadiationUnit } from './radiation-unit.js';

/** Share of light that the reference grass gives back, α (FAO-56, Eq. 38). */
const ALBEDO = 0.23;

/**
 * Net short-wave radiation, Rns (FAO-56, Eq. 38).
 *
 * Rns = (1 - 0.23) · Rs
 *
 * @param solarRadiation - Solar radiation. [MJ/m2/d or MJ/m2/h]
 * @returns What the reference surface keeps of it. [MJ/m2/d or MJ/m2/h]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 38; the same in ASCE-EWRI (2005), Eq. 16, tall alfalfa and hours included.
 * @example netShortwaveRadiation(megajoulesPerSquareMetreDay(14.5)) // 11.1, FAO-56 Example 12
 */
export function netShortwaveRadiation<Unit extends RadiationUnit>(solarRadiation: Quantity<Unit>): Quantity<Unit> {
  return finiteQuantity((1 - ALBEDO) * solarRadiation, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Net radiation, Rn (FAO-56, Eq. 40).
 *
 * Rn = Rns - Rnl
 *
 * @param netShortwaveRadiation - Light kept. [MJ/m2/d or MJ/m2/h]
 * @param netLongwaveRadiation - Heat lost to the sky, by the same time. [MJ/m2/d or MJ/m2/h]
 * @returns What is left to evaporate water and warm the air. [MJ/m2/d or MJ/m2/h]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 40.
 * @example netRadiation(megajoulesPerSquareMetreDay(16.9), megajoulesPerSquareMetreDay(3)) // 13.9, FAO-56 Example 16
 */
export function netRadiation<Unit extends RadiationUnit>(
  netShortwaveRadiation: Quantity<Unit>,
  netLongwaveRadiation: Quantity<NoInfer<Unit>>,
): Quantity<Unit> {
  return finiteQuantity(netShortwaveRadiation - netLongwaveRadiation, 'RADIATION_OUT_OF_DOMAIN');
}
