import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Days between irrigations that the root zone can bridge.
 *
 * interval = AD / (ETo · K), rounded down; AD = AW · Zr · MAD, which is the readily available water of the balance
 *
 * @param allowableDepletion - Allowable depletion AD: what the plants may use before the next irrigation. [mm]
 * @param dailyUse - Evapotranspiration of the plants on a day, ETo · K. [mm]
 * @returns Whole days; 0 where the root zone does not hold a day's use; null where nothing is used and no irrigation is due. [d]
 * @throws {DomainError} `WATERING_INTERVAL_OUT_OF_DOMAIN` when a value is below zero or not finite.
 * @source Irrigation trade's scheduling practice.
 * @example wateringInterval(17, 5) // 3: loam, 200 mm of roots, half of the available water
 */
export function wateringInterval(allowableDepletion: Quantity<'mm'>, dailyUse: Quantity<'mm'>): number | null {
  if (![allowableDepletion, dailyUse].every((value) => value >= 0 && Number.isFinite(value))) {
    throw new DomainError('WATERING_INTERVAL_OUT_OF_DOMAIN', { allowableDepletion, dailyUse });
  }
  // A hair below a whole number is floating-point dust, not a day less.
  return dailyUse === 0 ? null : Math.floor(allowableDepletion / dailyUse + 1e-9);
}
