import { DomainError } from '@rillbook/units/domain-error.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { saturationVapourPressure } from './saturation-vapour-pressure.js';

/** How the air moves over the wet bulb. */
export type Ventilation = 'ventilated' | 'natural' | 'indoor';

/** Psychrometer coefficient by ventilation (FAO-56, below Eq. 16): about 5 m/s of air, 1 m/s, and indoor. [1/°C] */
const PSYCHROMETER_COEFFICIENT: Readonly<Record<Ventilation, number>> = { ventilated: 0.000662, natural: 0.0008, indoor: 0.0012 };

/**
 * Actual vapour pressure from a psychrometer, ea (FAO-56, Eq. 15 and 16).
 *
 * ea = e°(Twet) - a·P·(Tdry - Twet)
 *
 * @param dryBulbTemperature - Temperature of the dry thermometer. [°C]
 * @param wetBulbTemperature - Temperature of the wet thermometer. [°C]
 * @param pressure - Atmospheric pressure. [kPa]
 * @param ventilation - How the air moves over the wet bulb. [code]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `TEMPERATURES_CONTRADICT` when it would be below 0: no air is drier than dry, so a thermometer is wrong;
 * `PRESSURE_OUT_OF_DOMAIN` when the pressure is below 0; `VENTILATION_UNKNOWN` when the word is none of them.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 15 and 16.
 * @example vapourPressureFromPsychrometer(celsius(25.6), celsius(19.5), kilopascals(87.9), 'ventilated') // 1.91, FAO-56 Example 4
 */
export function vapourPressureFromPsychrometer(
  dryBulbTemperature: Quantity<'°C'>,
  wetBulbTemperature: Quantity<'°C'>,
  pressure: Quantity<'kPa'>,
  ventilation: Ventilation,
): Quantity<'kPa'> {
  const coefficient = PSYCHROMETER_COEFFICIENT[ventilation];
  if (coefficient === undefined) throw new DomainError('VENTILATION_UNKNOWN', { ventilation });
  if (!(pressure >= 0)) throw new DomainError('PRESSURE_OUT_OF_DOMAIN', { pressure });
  const depression = dryBulbTemperature - wetBulbTemperature;
  const vapourPressure = saturationVapourPressure(wetBulbTemperature) - coefficient * pressure * depression;
  if (vapourPressure < 0) throw new DomainError('TEMPERATURES_CONTRADICT', { dryBulbTemperature, wetBulbTemperature, pressure });
  return kilopascals(vapourPressure);
}
