import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Monthly rain at which the formula changes. [mm] */
const WET_MONTH = 70;

/**
 * Dependable rain of a month: effective rain that comes in four years of five (FAO/AGLW formula).
 *
 * Pe = 0.6·P - 10 up to 70 mm; 0.8·P - 24 above; at least 0
 *
 * @param monthlyRain - Rain of the month. [mm]
 * @returns Dependable rain of the month. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when below 0.
 * @source FAO, dependable rain (FAO/AGLW formula), as in CROPWAT.
 */
export function dependableRain(monthlyRain: Quantity<'mm'>): Quantity<'mm'> {
  if (!(monthlyRain >= 0)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { monthlyRain });
  return millimetres(Math.max(0, monthlyRain <= WET_MONTH ? 0.6 * monthlyRain - 10 : 0.8 * monthlyRain - 24));
}
