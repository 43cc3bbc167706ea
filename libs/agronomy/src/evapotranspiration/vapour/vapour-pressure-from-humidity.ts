import { DomainError } from '@rillbook/units/domain-error.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { saturationVapourPressure } from './saturation-vapour-pressure.js';

/** A sensor in fog may read a little above saturation, and counts as saturated; more than this is a fault. [%] */
export const HIGHEST_HUMIDITY = 105;

/** The two temperatures of a day at which its humidities are reached. */
export type DayTemperatures = {
  /** Highest air temperature. [°C] */
  readonly maximumTemperature: Quantity<'°C'>;
  /** Lowest air temperature. [°C] */
  readonly minimumTemperature: Quantity<'°C'>;
};

/**
 * Actual vapour pressure from highest and lowest relative humidity, ea (FAO-56, Eq. 17).
 *
 * ea = (e°(Tmin)·RHmax/100 + e°(Tmax)·RHmin/100) / 2
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param maximumHumidity - Highest relative humidity, near dawn. [%]
 * @param minimumHumidity - Lowest relative humidity, in the afternoon. [%]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when a humidity is not within 0 … 105 %.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 17.
 * @example vapourPressureFromHumidityExtremes({ maximumTemperature: celsius(25), minimumTemperature: celsius(18) }, 82, 54) // 1.70, FAO-56 Example 5
 */
export function vapourPressureFromHumidityExtremes(
  temperatures: DayTemperatures,
  maximumHumidity: number,
  minimumHumidity: number,
): Quantity<'kPa'> {
  const atDawn = vapourPressureFromMaximumHumidity(temperatures, maximumHumidity);
  return kilopascals((atDawn + vapourPressureFromMinimumHumidity(temperatures, minimumHumidity)) / 2);
}

/**
 * Actual vapour pressure from the highest relative humidity alone, ea (FAO-56, Eq. 18).
 *
 * ea = e°(Tmin) · RHmax/100
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param maximumHumidity - Highest relative humidity, near dawn. [%]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when the humidity is not within 0 … 105 %.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 18.
 * @example vapourPressureFromMaximumHumidity({ maximumTemperature: celsius(25), minimumTemperature: celsius(18) }, 82) // 1.69, FAO-56 Example 5
 */
export function vapourPressureFromMaximumHumidity(temperatures: DayTemperatures, maximumHumidity: number): Quantity<'kPa'> {
  return kilopascals(saturationVapourPressure(temperatures.minimumTemperature) * fractionOf(maximumHumidity));
}

/**
 * Actual vapour pressure from the lowest relative humidity alone, ea (ASCE-EWRI, Eq. 13).
 *
 * ea = e°(Tmax) · RHmin/100
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param minimumHumidity - Lowest relative humidity, in the afternoon. [%]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when the humidity is not within 0 … 105 %.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation; equation number from memory.
 */
export function vapourPressureFromMinimumHumidity(temperatures: DayTemperatures, minimumHumidity: number): Quantity<'kPa'> {
  return kilopascals(saturationVapourPressure(temperatures.maximumTemperature) * fractionOf(minimumHumidity));
}

/**
 * Actual vapour pressure from the mean relative humidity, ea (FAO-56, Eq. 19).
 *
 * ea = RHmean/100 · (e°(Tmax) + e°(Tmin)) / 2
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param meanHumidity - Mean relative humidity. [%]
 * @returns Actual vapour pressure. [kPa]
 * @throws {DomainError} `HUMIDITY_OUT_OF_DOMAIN` when the humidity is not within 0 … 105 %.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 19.
 * @example vapourPressureFromMeanHumidity({ maximumTemperature: celsius(25), minimumTemperature: celsius(18) }, 68) // 1.78, FAO-56 Example 5
 */
export function vapourPressureFromMeanHumidity(temperatures: DayTemperatures, meanHumidity: number): Quantity<'kPa'> {
  const saturated = saturationVapourPressure(temperatures.maximumTemperature) + saturationVapourPressure(temperatures.minimumTemperature);
  return kilopascals((fractionOf(meanHumidity) * saturated) / 2);
}

function fractionOf(humidity: number): number {
  if (!(humidity >= 0 && humidity <= HIGHEST_HUMIDITY)) throw new DomainError('HUMIDITY_OUT_OF_DOMAIN', { humidity });
  return Math.min(1, humidity / 100);
}
