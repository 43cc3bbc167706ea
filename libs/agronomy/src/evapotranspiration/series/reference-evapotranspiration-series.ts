import type { Quantity } from '@rillbook/units/quantity.js';
import type { WeatherDay } from '../../weather/weather-day.js';
import type { WeatherStation } from '../../weather/weather-station.js';
import { atmosphericPressure } from '../air/atmospheric-pressure.js';
import { ASSUMED_ELEVATION, type AssumedInput } from '../assumed-input.js';
import { evapotranspirationSd } from '../evapotranspiration-sd.js';
import { referenceEvapotranspiration } from '../reference-evapotranspiration.js';
import { runReferenceEvapotranspiration, type WeatherDaySeries } from './reference-evapotranspiration-series.kernel.js';
import { type SunOfLatitude, sunOfLatitude } from './sun-of-latitude.js';

/** Reference evapotranspiration of a station's days, as columns of one length. */
export type ReferenceEvapotranspirationSeries = {
  /** Reference evapotranspiration of short grass; NaN where it is not known. [mm], one per day */
  readonly etoMm: Float64Array;
  /** Standard deviation over value; NaN where the value is not known. [–], one per day */
  readonly relativeSd: Float64Array;
  /** How many days were complete; the others went through the procedures for missing data. [–] */
  readonly completeDays: number;
};

/**
 * Reference evapotranspiration of many days of one station: the same values as `referenceEvapotranspiration` of each.
 *
 * Complete days are computed in one loop without an object a day; the others, a few as a rule, one by one.
 *
 * @param days - The days as columns; what was not measured is NaN. [any]
 * @param station - Where they were measured. [any]
 * @param sunTable - The sun over its latitude, where several series share it. [any]
 * @returns The values as columns. [mm], one per day
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source As `referenceEvapotranspiration`.
 */
export function referenceEvapotranspirationSeries(
  days: WeatherDaySeries,
  station: WeatherStation,
  sunTable: SunOfLatitude = sunOfLatitude(station.latitude),
): ReferenceEvapotranspirationSeries {
  const etoMm = new Float64Array(days.dayOfYear.length);
  const pressure = atmosphericPressure(station.elevation ?? ASSUMED_ELEVATION);
  const completeDays = runReferenceEvapotranspiration(days, sunTable, pressure, etoMm);
  const assumed: readonly AssumedInput[] = station.elevation === null ? ['elevation'] : [];
  const relativeSd = new Float64Array(etoMm.length).fill(evapotranspirationSd('penman-monteith', assumed));
  if (completeDays < etoMm.length) completeOthers(days, station, etoMm, relativeSd);
  return { etoMm, relativeSd, completeDays };
}

function completeOthers(days: WeatherDaySeries, station: WeatherStation, etoMm: Float64Array, relativeSd: Float64Array): void {
  for (let at = 0; at < etoMm.length; at += 1) {
    if (!Number.isNaN(etoMm[at])) continue;
    const answer = referenceEvapotranspiration(dayAt(days, at), station);
    etoMm[at] = answer.etoMm ?? Number.NaN;
    relativeSd[at] = answer.etoMm === null ? Number.NaN : answer.relativeSd;
  }
}

function dayAt(days: WeatherDaySeries, at: number): WeatherDay {
  const value = <Unit extends string>(column: Float64Array): Quantity<Unit> | null => {
    const number = column[at] as number;
    return Number.isNaN(number) ? null : (number as Quantity<Unit>);
  };
  return {
    dayOfYear: days.dayOfYear[at] as number,
    tmax: value(days.tmax),
    tmin: value(days.tmin),
    rhmax: value(days.rhmax),
    rhmin: value(days.rhmin),
    dewPoint: value(days.dewPoint),
    wind: value(days.wind),
    windHeight: value(days.windHeight),
    solar: value(days.solar),
    rain: null,
    givenEto: value(days.givenEto),
  };
}
