import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Water stress coefficient, Ks (FAO-56, Eq. 84).
 *
 * Ks = (TAW - Dr) / (TAW - RAW) where Dr > RAW, else 1; never below 0
 *
 * @param depletion - Depletion of the root zone at the start of the day, Dr. [mm]
 * @param totalAvailableWater - Total available water, TAW. [mm]
 * @param readilyAvailableWater - Readily available water, RAW. [mm]
 * @returns Share of the unstressed evapotranspiration that remains. [–]
 * @throws {DomainError} `ROOT_ZONE_OUT_OF_DOMAIN` when not 0 ≤ RAW ≤ TAW, or a value is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 84.
 * @example waterStressCoefficient(millimetres(67), millimetres(160), millimetres(64)) // 0.97, FAO-56 Example 37
 */
export function waterStressCoefficient(
  depletion: Quantity<'mm'>,
  totalAvailableWater: Quantity<'mm'>,
  readilyAvailableWater: Quantity<'mm'>,
): number {
  if (!(readilyAvailableWater >= 0 && readilyAvailableWater <= totalAvailableWater && Number.isFinite(depletion + totalAvailableWater))) {
    throw new DomainError('ROOT_ZONE_OUT_OF_DOMAIN', { depletion, totalAvailableWater, readilyAvailableWater });
  }
  if (depletion <= readilyAvailableWater) return 1;
  if (depletion >= totalAvailableWater) return 0;
  return (totalAvailableWater - depletion) / (totalAvailableWater - readilyAvailableWater);
}
