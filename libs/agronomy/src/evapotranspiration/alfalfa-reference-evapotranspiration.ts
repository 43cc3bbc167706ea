import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { plausibleWeatherDay, type WeatherValue } from '../weather/plausible-weather-day.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import type { AssumedInput } from './assumed-input.js';
import { completeWeatherDay, hasMoreThanTemperatures, measuredTemperatures } from './complete-weather-day.js';
import { evapotranspirationSd } from './evapotranspiration-sd.js';
import { tallReferenceEvapotranspiration } from './methods/penman-monteith.js';
import { standardizedTerms } from './methods/standardized-terms.js';
import type { EvapotranspirationGap } from './reference-evapotranspiration.js';

/** A day's reference evapotranspiration of alfalfa with how it came about; or null with the reason. */
export type AlfalfaReferenceEvapotranspiration =
  | {
      /** Reference evapotranspiration of tall alfalfa. [mm] */
      readonly etrMm: Quantity<'mm'>;
      /** What had to be assumed, since it was not measured. [code] */
      readonly assumed: readonly AssumedInput[];
      /** Measured values that cannot be and were not used. [code] */
      readonly refused: readonly WeatherValue[];
      /** Standard deviation over value: an assumption by what was assumed. [–] */
      readonly relativeSd: number;
    }
  | { readonly etrMm: null; readonly reason: EvapotranspirationGap | 'temperatures-alone'; readonly refused: readonly WeatherValue[] };

/**
 * Reference evapotranspiration of tall alfalfa in a day, ETr (ASCE-EWRI, Eq. 1, tall reference).
 *
 * With both temperatures and any of humidity, wind and solar radiation, completed by the procedures for missing data. Temperatures alone do
 * not give it: Hargreaves-Samani is for grass. A day on which more dew forms than water leaves counts as 0.
 *
 * @param day - The day as measured. [any]
 * @param station - Where it was measured. [any]
 * @returns The value with assumed and refused inputs and relative standard deviation; or null with the reason. [mm]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation; Allen et al. (1998), FAO Irrigation and Drainage
 * Paper 56, chapter 3.
 * @example 10.57 for Fallon, Nevada, on 1 July 2015
 */
export function alfalfaReferenceEvapotranspiration(day: WeatherDay, station: WeatherStation): AlfalfaReferenceEvapotranspiration {
  const { day: measured, refused } = plausibleWeatherDay(day);
  const temperatures = measuredTemperatures(measured);
  if (temperatures === null) {
    const refusedThem = refused.includes('tmax') || refused.includes('tmin');
    return { etrMm: null, reason: refusedThem ? 'temperatures-refused' : 'no-temperatures', refused };
  }
  if (!hasMoreThanTemperatures(measured)) return { etrMm: null, reason: 'temperatures-alone', refused };
  const { day: complete, site, assumed } = completeWeatherDay(measured, temperatures, station);
  const etr = tallReferenceEvapotranspiration(standardizedTerms(complete, site));
  return { etrMm: millimetres(Math.max(0, etr)), assumed, refused, relativeSd: evapotranspirationSd('penman-monteith', assumed) };
}
