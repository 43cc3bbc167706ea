import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { plausibleWeatherDay, type WeatherValue } from '../weather/plausible-weather-day.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import { meanTemperature } from './air/mean-temperature.js';
import type { AssumedInput } from './assumed-input.js';
import { completeWeatherDay, hasMoreThanTemperatures, measuredTemperatures } from './complete-weather-day.js';
import { type EvapotranspirationMethod, evapotranspirationSd } from './evapotranspiration-sd.js';
import { hargreavesSamani } from './methods/hargreaves-samani.js';
import { shortReferenceEvapotranspiration } from './methods/penman-monteith.js';
import { standardizedTerms } from './methods/standardized-terms.js';
import { extraterrestrialRadiation } from './sun/extraterrestrial-radiation.js';

/** Why a day has no reference evapotranspiration. */
export type EvapotranspirationGap = 'no-temperatures' | 'temperatures-refused';

/** A day's reference evapotranspiration with how it came about; or null with the reason. */
export type ReferenceEvapotranspiration =
  | {
      /** Reference evapotranspiration of short grass. [mm] */
      readonly etoMm: Quantity<'mm'>;
      readonly method: EvapotranspirationMethod;
      /** What had to be assumed, since it was not measured. [code] */
      readonly assumed: readonly AssumedInput[];
      /** Measured values that cannot be and were not used. [code] */
      readonly refused: readonly WeatherValue[];
      /** Standard deviation over value: an assumption by method and what was assumed. [–] */
      readonly relativeSd: number;
    }
  | { readonly etoMm: null; readonly reason: EvapotranspirationGap; readonly refused: readonly WeatherValue[] };

/**
 * Reference evapotranspiration of a day, ETo, by the best method that its values allow (ASCE-EWRI, Eq. 1, short reference).
 *
 * With both temperatures and any of humidity, wind and solar radiation: the standardized Penman-Monteith equation, completed by the
 * procedures for missing data. Else the value that the source states itself, where it states one. Else, with temperatures alone:
 * Hargreaves-Samani. A day on which more dew forms than water leaves counts as 0.
 *
 * @param day - The day as measured. [any]
 * @param station - Where it was measured. [any]
 * @returns The value with method, assumed and refused inputs and relative standard deviation; or null with the reason. [mm]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation; Allen et al. (1998), FAO Irrigation and Drainage
 * Paper 56, chapter 3 and Eq. 52.
 * @example 7.94 for Fallon, Nevada, on 1 July 2015
 */
export function referenceEvapotranspiration(day: WeatherDay, station: WeatherStation): ReferenceEvapotranspiration {
  const plausible = plausibleWeatherDay(day);
  const measured = plausible.day;
  const temperatures = measuredTemperatures(measured);
  const answer = (etoMm: Quantity<'mm'>, method: EvapotranspirationMethod, assumed: readonly AssumedInput[]) => {
    return { etoMm, method, assumed, refused: plausible.refused, relativeSd: evapotranspirationSd(method, assumed) };
  };
  if (temperatures !== null && hasMoreThanTemperatures(measured)) {
    const completed = completeWeatherDay(measured, temperatures, station);
    const eto = shortReferenceEvapotranspiration(standardizedTerms(completed.day, completed.site));
    return answer(millimetres(Math.max(0, eto)), 'penman-monteith', completed.assumed);
  }
  if (measured.givenEto !== null) return answer(measured.givenEto, 'given', []);
  if (temperatures !== null) {
    const mean = meanTemperature(temperatures.maximumTemperature, temperatures.minimumTemperature);
    const sun = extraterrestrialRadiation(station.latitude, day.dayOfYear);
    return answer(hargreavesSamani(mean, temperatures, sun), 'hargreaves-samani', ['humidity', 'wind', 'solar-radiation']);
  }
  const refusedThem = plausible.refused.includes('tmax') || plausible.refused.includes('tmin');
  return { etoMm: null, reason: refusedThem ? 'temperatures-refused' : 'no-temperatures', refused: plausible.refused };
}
