import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { saturationVapourPressure } from './saturation-vapour-pressure.js';

/**
 * Slope of the saturation vapour pressure curve, Δ (FAO-56, Eq. 13).
 *
 * Δ = 4098 · e°(T) / (T + 237.3)²
 *
 * @param airTemperature - Air temperature, for a day its mean. [°C]
 * @returns Change of saturation vapour pressure with temperature. [kPa/°C]
 * @throws {DomainError} `AIR_TEMPERATURE_OUT_OF_DOMAIN` at the formula's pole.
 * @domain -40 … 60 °C
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 13.
 * @example slopeOfSaturationVapourPressure(celsius(30)) // 0.243, FAO-56 Annex 2, Table 2.4
 */
export function slopeOfSaturationVapourPressure(airTemperature: Quantity<'°C'>): Quantity<'kPa/°C'> {
  return finiteQuantity((4098 * saturationVapourPressure(airTemperature)) / (airTemperature + 237.3) ** 2, 'AIR_TEMPERATURE_OUT_OF_DOMAIN');
}

/**
 * Slope of the saturation vapour pressure curve as the standardized equation has it, Δ (ASCE-EWRI, Eq. 5).
 *
 * Δ = 2503 · exp(17.27·T / (T + 237.3)) / (T + 237.3)²
 *
 * @param airTemperature - Air temperature, for a day its mean. [°C]
 * @returns Change of saturation vapour pressure with temperature. [kPa/°C]
 * @throws {DomainError} `AIR_TEMPERATURE_OUT_OF_DOMAIN` at the formula's pole.
 * @domain -40 … 60 °C
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 5.
 */
export function standardizedSlopeOfSaturationVapourPressure(airTemperature: Quantity<'°C'>): Quantity<'kPa/°C'> {
  const exponential = Math.exp((17.27 * airTemperature) / (airTemperature + 237.3));
  return finiteQuantity((2503 * exponential) / (airTemperature + 237.3) ** 2, 'AIR_TEMPERATURE_OUT_OF_DOMAIN');
}
