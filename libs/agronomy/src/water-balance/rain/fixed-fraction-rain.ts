import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Share of rain that ordinance budgets count (23 CCR 492.4 and local codes; also the water budget of EPA WaterSense). */
export const ORDINANCE_RAIN_SHARE = 0.25;

/**
 * Effective rain as a fixed share of rain, Pe.
 *
 * Pe = share · P
 *
 * @param monthlyRain - Rain of the month or year. [mm]
 * @param share - Share that counts; ordinances have 0.25. [–]
 * @returns Effective rain of the same time. [mm]
 * @throws {DomainError} `RAIN_SHARE_OUT_OF_DOMAIN` when not within 0 … 1; `RAIN_OUT_OF_DOMAIN` when the rain is below 0.
 * @source Local codes on the model of 23 CCR 492.4: 25 % of annual rain; EPA WaterSense water budget, 25 % of the peak month's rain, from memory.
 * @example fixedFractionRain(millimetresFromInches(2), ORDINANCE_RAIN_SHARE) // 12.7, half an inch
 */
export function fixedFractionRain(monthlyRain: Quantity<'mm'>, share: number): Quantity<'mm'> {
  if (!(share >= 0 && share <= 1)) throw new DomainError('RAIN_SHARE_OUT_OF_DOMAIN', { share });
  if (!(monthlyRain >= 0)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { monthlyRain });
  return millimetres(share * monthlyRain);
}
