import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Readily available water of the root zone, RAW (FAO-56, Eq. 83).
 *
 * RAW = p·TAW
 *
 * @param depletionFraction - Share of it that may be used without stress, p; in landscapes the management allowed depletion. [–]
 * @param totalAvailableWater - Total available water, TAW. [mm]
 * @returns Water that may be used before the next irrigation. [mm]
 * @throws {DomainError} `DEPLETION_FRACTION_OUT_OF_DOMAIN` when the share is not within 0 … 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 83.
 * @example readilyAvailableWater(0.4, millimetres(72)) // 29, FAO-56 Example 36
 */
export function readilyAvailableWater(depletionFraction: number, totalAvailableWater: Quantity<'mm'>): Quantity<'mm'> {
  if (!(depletionFraction >= 0 && depletionFraction <= 1)) throw new DomainError('DEPLETION_FRACTION_OUT_OF_DOMAIN', { depletionFraction });
  return millimetres(depletionFraction * totalAvailableWater);
}
