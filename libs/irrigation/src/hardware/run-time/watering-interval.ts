import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

const MILLIMETRES_PER_METRE = 1000;

/**
 * Allowable depletion, AD: water that the plants may use before the next irrigation.
 *
 * AD = AW · Zr · MAD
 *
 * @param availableWater - Available water-holding capacity of the soil, AW. [mm/m]
 * @param rootDepth - Depth of the root zone, Zr. [mm]
 * @param depletionFraction - Management allowed depletion, MAD. [–]
 * @returns Allowable depletion. [mm]
 * @throws {DomainError} `ALLOWABLE_DEPLETION_OUT_OF_DOMAIN` when the water or depth are below zero or not finite, or MAD is not within 0 to 1.
 * @source Irrigation trade's scheduling practice; the same as FAO-56 Eq. 82 and 83.
 */
export function allowableDepletion(availableWater: Quantity<'mm/m'>, rootDepth: Quantity<'mm'>, depletionFraction: number): Quantity<'mm'> {
  if (!(availableWater >= 0 && rootDepth >= 0 && depletionFraction >= 0 && depletionFraction <= 1)) {
    throw new DomainError('ALLOWABLE_DEPLETION_OUT_OF_DOMAIN', { availableWater, rootDepth, depletionFraction });
  }
  return finiteQuantity((availableWater * rootDepth * depletionFraction) / MILLIMETRES_PER_METRE, 'ALLOWABLE_DEPLETION_OUT_OF_DOMAIN');
}

/**
 * Days between irrigations that the root zone can bridge.
 *
 * interval = AD / (ETo · K), rounded down
 *
 * @param depletion - Allowable depletion, AD. [mm]
 * @param dailyUse - Evapotranspiration of the plants on a day, ETo · K. [mm]
 * @returns Whole days; 0 where the root zone does not hold a day's use; null where nothing is used and no irrigation is due. [d]
 * @throws {DomainError} `WATERING_INTERVAL_OUT_OF_DOMAIN` when a value is below zero or not finite.
 * @source Irrigation trade's scheduling practice.
 */
export function wateringInterval(depletion: Quantity<'mm'>, dailyUse: Quantity<'mm'>): number | null {
  if (![depletion, dailyUse].every((value) => value >= 0 && Number.isFinite(value))) {
    throw new DomainError('WATERING_INTERVAL_OUT_OF_DOMAIN', { depletion, dailyUse });
  }
  // A hair below a whole number is floating-point dust, not a day less.
  return dailyUse === 0 ? null : Math.floor(depletion / dailyUse + 1e-9);
}
