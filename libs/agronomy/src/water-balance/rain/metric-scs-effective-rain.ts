import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Monthly rain at which the formula changes. [mm] */
const HEAVY_MONTH = 250;

/**
 * Monthly effective rain in the metric form of the Soil Conservation Service method.
 *
 * Pe = P·(125 - 0.2·P)/125 up to 250 mm; 125 + 0.1·P above
 *
 * @param monthlyRain - Rain of the month. [mm]
 * @returns Effective rain of the month. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when below 0.
 * @source Metric USDA-SCS form as in FAO CROPWAT; formula read in an open package, values are arithmetic.
 * @example metricScsEffectiveRain(millimetres(100)) // 84.0
 */
export function metricScsEffectiveRain(monthlyRain: Quantity<'mm'>): Quantity<'mm'> {
  if (!(monthlyRain >= 0)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { monthlyRain });
  return millimetres(monthlyRain <= HEAVY_MONTH ? (monthlyRain * (125 - 0.2 * monthlyRain)) / 125 : 125 + 0.1 * monthlyRain);
}
