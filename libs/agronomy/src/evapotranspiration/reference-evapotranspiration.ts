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
import type { DayTemperatures } from './vapour/vapour-pressure-from-humidity.js';

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
 * Reference evapotranspiration of a day, ETo, computed or as its source states it, whichever has the smaller standard deviation.
 *
 * Computed with both temperatures and any of humidity, wind and solar radiation: the standardized Penman-Monteith equation (ASCE-EWRI, Eq. 1,
 * short reference), completed by the procedures for missing data. With temperatures alone: Hargreaves-Samani. Where both are equally sure, as
 * computed. A day on which more dew forms than water leaves counts as 0.
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
  const computed = byPenmanMonteith(measured, temperatures, station) ?? byHargreavesSamani(measured, temperatures, station);
  const given = asGiven(measured);
  const surest = given !== null && !(computed !== null && computed.relativeSd <= given.relativeSd) ? given : computed;
  if (surest !== null) return { ...surest, refused: plausible.refused };
  const refusedThem = plausible.refused.includes('tmax') || plausible.refused.includes('tmin');
  return { etoMm: null, reason: refusedThem ? 'temperatures-refused' : 'no-temperatures', refused: plausible.refused };
}

/** One way to a day's value. */
type Way = Pick<Extract<ReferenceEvapotranspiration, { method: string }>, 'etoMm' | 'method' | 'assumed' | 'relativeSd'> | null;

function byPenmanMonteith(measured: WeatherDay, temperatures: DayTemperatures | null, station: WeatherStation): Way {
  if (temperatures === null || !hasMoreThanTemperatures(measured)) return null;
  const { day, site, assumed } = completeWeatherDay(measured, temperatures, station);
  const eto = shortReferenceEvapotranspiration(standardizedTerms(day, site));
  return way(millimetres(Math.max(0, eto)), 'penman-monteith', assumed);
}

const asGiven = ({ givenEto }: WeatherDay): Way => (givenEto === null ? null : way(givenEto, 'given', []));

function byHargreavesSamani({ dayOfYear }: WeatherDay, temperatures: DayTemperatures | null, { latitude }: WeatherStation): Way {
  if (temperatures === null) return null;
  const mean = meanTemperature(temperatures.maximumTemperature, temperatures.minimumTemperature);
  const eto = hargreavesSamani(mean, temperatures, extraterrestrialRadiation(latitude, dayOfYear));
  return way(eto, 'hargreaves-samani', ['humidity', 'wind', 'solar-radiation']);
}

const way = (etoMm: Quantity<'mm'>, method: EvapotranspirationMethod, assumed: readonly AssumedInput[]): Way => {
  return { etoMm, method, assumed, relativeSd: evapotranspirationSd(method, assumed) };
};
