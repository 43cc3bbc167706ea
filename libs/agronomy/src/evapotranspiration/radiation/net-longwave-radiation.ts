import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay, megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import type { DayTemperatures } from '../vapour/vapour-pressure-from-humidity.js';

/** Stefan-Boltzmann constant as FAO-56 prints it, Eq. 39. [MJ/m2/d/K⁴] */
const STEFAN_BOLTZMANN_FAO56 = 4.903e-9;

/** Stefan-Boltzmann constant as the standardized equation prints it, ASCE-EWRI (2005), Eq. 17. [MJ/m2/d/K⁴] */
const STEFAN_BOLTZMANN_STANDARDIZED = 4.901e-9;

/** Stefan-Boltzmann constant by the hour, ASCE-EWRI (2005), Eq. 44. [MJ/m2/h/K⁴] */
const STEFAN_BOLTZMANN_HOURLY = 2.042e-10;

/** Kelvin offset that both publications use in this formula; the definition is 273.15. */
const KELVIN_OFFSET = 273.16;

/**
 * Net outgoing long-wave radiation, Rnl (FAO-56, Eq. 39).
 *
 * Rnl = σ · (Tmax,K⁴ + Tmin,K⁴)/2 · (0.34 - 0.14·√ea) · (1.35·Rs/Rso - 0.35)
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param vapourPressure - Actual vapour pressure. [kPa]
 * @param cloudiness - Cloudiness factor, the last term of the formula. [–]
 * @returns Heat that the ground loses to the sky. [MJ/m2/d]
 * @throws {DomainError} `VAPOUR_PRESSURE_OUT_OF_DOMAIN` when negative.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 39.
 * @example 3.5 for Tmax 25.1, Tmin 19.1, ea 2.1, Rs 14.5, Rso 18.8, FAO-56 Example 11
 */
export function netLongwaveRadiation(
  temperatures: DayTemperatures,
  vapourPressure: Quantity<'kPa'>,
  cloudiness: number,
): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(STEFAN_BOLTZMANN_FAO56 * emitted(temperatures, vapourPressure) * cloudiness);
}

/**
 * Net outgoing long-wave radiation of the standardized equation, Rnl (ASCE-EWRI, Eq. 17).
 *
 * Rnl = σ · fcd · (0.34 - 0.14·√ea) · (Tmax,K⁴ + Tmin,K⁴)/2
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param vapourPressure - Actual vapour pressure. [kPa]
 * @param cloudiness - Cloudiness factor, fcd. [–]
 * @returns Heat that the ground loses to the sky. [MJ/m2/d]
 * @throws {DomainError} `VAPOUR_PRESSURE_OUT_OF_DOMAIN` when negative.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 17.
 */
export function standardizedNetLongwaveRadiation(
  temperatures: DayTemperatures,
  vapourPressure: Quantity<'kPa'>,
  cloudiness: number,
): Quantity<'MJ/m2/d'> {
  return megajoulesPerSquareMetreDay(STEFAN_BOLTZMANN_STANDARDIZED * emitted(temperatures, vapourPressure) * cloudiness);
}

/**
 * Net outgoing long-wave radiation of an hour, Rnl (ASCE-EWRI, Eq. 44).
 *
 * Rnl = σ · fcd · (0.34 - 0.14·√ea) · T,K⁴
 *
 * @param airTemperature - Mean air temperature of the hour. [°C]
 * @param vapourPressure - Actual vapour pressure. [kPa]
 * @param cloudiness - Cloudiness factor, fcd. [–]
 * @returns Heat that the ground loses to the sky. [MJ/m2/h]
 * @throws {DomainError} `VAPOUR_PRESSURE_OUT_OF_DOMAIN` when negative.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 44; equation number from memory.
 * @example 0.2290 for 33.22 °C, ea 1.199 and fcd 0.6816, Fallon, Nevada, 1 July 2015, 10 to 11 h
 */
export function hourlyNetLongwaveRadiation(
  airTemperature: Quantity<'°C'>,
  vapourPressure: Quantity<'kPa'>,
  cloudiness: number,
): Quantity<'MJ/m2/h'> {
  const temperatures = { maximumTemperature: airTemperature, minimumTemperature: airTemperature };
  return megajoulesPerSquareMetreHour(STEFAN_BOLTZMANN_HOURLY * emitted(temperatures, vapourPressure) * cloudiness);
}

function emitted(temperatures: DayTemperatures, vapourPressure: Quantity<'kPa'>): number {
  if (vapourPressure < 0) throw new DomainError('VAPOUR_PRESSURE_OUT_OF_DOMAIN', { vapourPressure });
  const warmest = (temperatures.maximumTemperature + KELVIN_OFFSET) ** 4;
  const coldest = (temperatures.minimumTemperature + KELVIN_OFFSET) ** 4;
  return ((warmest + coldest) / 2) * (0.34 - 0.14 * Math.sqrt(vapourPressure));
}
