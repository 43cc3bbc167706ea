import { DomainError } from '@rillbook/units/domain-error.js';
import { celsius } from '@rillbook/units/temperature.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Dew point from the actual vapour pressure, Tdew: FAO-56, Eq. 14, solved for the temperature.
 *
 * Tdew = 237.3·L / (17.27 - L), L = ln(ea / 0.6108)
 *
 * @param vapourPressure - Actual vapour pressure. [kPa]
 * @returns Temperature to which the air must cool to be saturated. [°C]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` when not above 0; `TEMPERATURE_OUT_OF_DOMAIN` when the air is drier than any on earth.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 11 and 14.
 * @example dewPointFromVapourPressure(kilopascals(1.68)) // 14.8, FAO-56 Example 20 backwards
 */
export function dewPointFromVapourPressure(vapourPressure: Quantity<'kPa'>): Quantity<'°C'> {
  if (!(vapourPressure > 0)) throw new DomainError('PRESSURE_OUT_OF_DOMAIN', { value: vapourPressure });
  const logarithm = Math.log(vapourPressure / 0.6108);
  return celsius((237.3 * logarithm) / (17.27 - logarithm));
}
