import { DomainError } from '@rillbook/units/domain-error.js';
import { inchesFromMillimetres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Storage factor of the monthly effective rain, SF (NEH 623, Eq. 2-85).
 *
 * SF = 0.531747 + 0.295164·D - 0.057697·D² + 0.003804·D³, D in inches
 *
 * @param usableStorage - Water that the soil may store for use, commonly half of what is available. [mm]
 * @returns Storage factor; 1 at 3 inches. [–]
 * @domain 0.75 … 5 in (19 … 127 mm); outside, the nearer end is used
 * @source USDA-NRCS (1993), National Engineering Handbook 623, chapter 2, Eq. 2-85.
 */
export function storageFactor(usableStorage: Quantity<'mm'>): number {
  const depth = Math.min(5, Math.max(0.75, inchesFromMillimetres(usableStorage)));
  return 0.531747 + 0.295164 * depth - 0.057697 * depth ** 2 + 0.003804 * depth ** 3;
}

/**
 * Monthly effective rain before its limits (USDA-SCS TR-21; NEH 623, Eq. 2-84).
 *
 * Pe = SF · (0.70917·P^0.82416 - 0.11556) · 10^(0.02426·ETc), in inches
 *
 * @param monthlyRain - Rain of the month. [mm]
 * @param etc - Evapotranspiration of the plants in the month. [mm]
 * @param storageFactor - Storage factor. [–]
 * @returns Effective rain of the month, not limited by rain and need; at least 0. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN`, `EVAPOTRANSPIRATION_OUT_OF_DOMAIN` or `STORAGE_FACTOR_OUT_OF_DOMAIN` when the one or the other is
 * below 0.
 * @source USDA-NRCS (1993), National Engineering Handbook 623, chapter 2, Eq. 2-84.
 */
export function unlimitedUsdaScsEffectiveRain(monthlyRain: Quantity<'mm'>, etc: Quantity<'mm'>, storageFactor: number): Quantity<'mm'> {
  if (!(monthlyRain >= 0)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { monthlyRain });
  if (!(etc >= 0)) throw new DomainError('EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc });
  if (!(storageFactor >= 0)) throw new DomainError('STORAGE_FACTOR_OUT_OF_DOMAIN', { storageFactor });
  const rainTerm = 0.70917 * inchesFromMillimetres(monthlyRain) ** 0.82416 - 0.11556;
  return millimetresFromInches(Math.max(0, storageFactor * rainTerm * 10 ** (0.02426 * inchesFromMillimetres(etc))));
}

/**
 * Monthly effective rain (USDA-SCS TR-21; NEH 623, Eq. 2-84), never above rain or need.
 *
 * Pe = min(P, ETc, SF · (0.70917·P^0.82416 - 0.11556) · 10^(0.02426·ETc))
 *
 * @param monthlyRain - Rain of the month. [mm]
 * @param etc - Evapotranspiration of the plants in the month. [mm]
 * @param storageFactor - Storage factor. [–]
 * @returns Effective rain of the month. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN`, `EVAPOTRANSPIRATION_OUT_OF_DOMAIN` or `STORAGE_FACTOR_OUT_OF_DOMAIN` when the one or the other is
 * below 0.
 * @source USDA-NRCS (1993), National Engineering Handbook 623, chapter 2, Eq. 2-84.
 */
export function usdaScsEffectiveRain(monthlyRain: Quantity<'mm'>, etc: Quantity<'mm'>, storageFactor: number): Quantity<'mm'> {
  return millimetres(Math.min(monthlyRain, etc, unlimitedUsdaScsEffectiveRain(monthlyRain, etc, storageFactor)));
}
