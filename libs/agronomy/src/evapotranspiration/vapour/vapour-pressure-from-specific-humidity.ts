import { DomainError } from '@rillbook/units/domain-error.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Molecular weight of water vapour over that of dry air (FAO-56, Eq. 8). */
const WEIGHT_RATIO = 0.622;

/**
 * Actual vapour pressure from the specific humidity, ea.
 *
 * ea = q·P / (0.622 + 0.378·q)
 *
 * @param specificHumidity - Mass of water vapour in a mass of moist air. [kg/kg]
 * @param pressure - Atmospheric pressure. [kPa]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when the specific humidity is not within 0 … 0.1; `PRESSURE_OUT_OF_DOMAIN` when the pressure is below 0.
 * @source Definition of specific humidity, q = 0.622·ea / (P - 0.378·ea), with the ratio of FAO-56, Eq. 8; from memory.
 * @example vapourPressureFromSpecificHumidity(0.01, kilopascals(101.3)) // 1.62
 */
export function vapourPressureFromSpecificHumidity(specificHumidity: number, pressure: Quantity<'kPa'>): Quantity<'kPa'> {
  if (!(specificHumidity >= 0 && specificHumidity <= 0.1)) throw new DomainError('HUMIDITY_OUT_OF_DOMAIN', { value: specificHumidity });
  if (!(pressure >= 0)) throw new DomainError('PRESSURE_OUT_OF_DOMAIN', { pressure });
  return kilopascals((specificHumidity * pressure) / (WEIGHT_RATIO + (1 - WEIGHT_RATIO) * specificHumidity));
}
