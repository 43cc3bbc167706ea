import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Depletion fraction adjusted to the day's evapotranspiration, p (FAO-56, note to Table 22).
 *
 * p = p(table) + 0.04·(5 - ETc), within 0.1 … 0.8
 *
 * @param tableFraction - Depletion fraction of the table, which holds for 5 mm/d. [–]
 * @param etc - Evapotranspiration of the plants on the day. [mm]
 * @returns Share of total available water that may be used without stress. [–]
 * @throws {DomainError} `DEPLETION_FRACTION_OUT_OF_DOMAIN` when the table's share is not within 0 … 1;
 * `EVAPOTRANSPIRATION_OUT_OF_DOMAIN` when the day's is below 0 or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 22, note, and below Eq. 84.
 * @example adjustedDepletionFraction(0.65, millimetres(1.431)) // 0.793
 */
export function adjustedDepletionFraction(tableFraction: number, etc: Quantity<'mm'>): number {
  if (!(tableFraction >= 0 && tableFraction <= 1)) throw new DomainError('DEPLETION_FRACTION_OUT_OF_DOMAIN', { tableFraction });
  if (!(etc >= 0 && Number.isFinite(etc))) throw new DomainError('EVAPOTRANSPIRATION_OUT_OF_DOMAIN', { etc });
  return Math.min(0.8, Math.max(0.1, tableFraction + 0.04 * (5 - etc)));
}
