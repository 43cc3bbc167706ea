import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import { windSpeedAt2M } from '../air/wind-speed-at-2-m.js';
import { ASSUMED_ELEVATION, ASSUMED_WIND_HEIGHT } from '../assumed-input.js';
import { shortHourlyReferenceEvapotranspiration, tallHourlyReferenceEvapotranspiration } from '../methods/hourly-penman-monteith.js';
import { type CompleteHour, hourlyTerms } from '../methods/hourly-terms.js';
import { cloudinessFactor } from '../radiation/cloudiness-factor.js';
import { vapourPressureFromDewPoint } from '../vapour/vapour-pressure-from-dew-point.js';
import { vapourPressureFromHourlyHumidity } from '../vapour/vapour-pressure-from-hourly-humidity.js';
import { hourlyClearSkyRadiation } from './hourly-clear-sky-radiation.js';
import { type HourlyValue, plausibleWeatherHour } from './plausible-weather-hour.js';
import { type SunOfHour, sunOfHour } from './sun-of-hour.js';
import type { ClockedStation, WeatherHour } from './weather-hour.js';

/** What had to be assumed for an hour. */
export type HourlyAssumption = 'cloudiness' | 'wind-height' | 'elevation';

/** What an hour lacks, so that it has no reference evapotranspiration. */
export type HourlyGap = 'no-temperature' | 'no-humidity' | 'no-wind' | 'no-solar-radiation';

/** An hour's reference evapotranspiration of grass and alfalfa; or null with all reasons. */
export type HourlyReferenceEvapotranspiration =
  | {
      /** Reference evapotranspiration of short grass; below 0 when dew forms. [mm] */
      readonly etoMm: Quantity<'mm'>;
      /** Reference evapotranspiration of tall alfalfa; below 0 when dew forms. [mm] */
      readonly etrMm: Quantity<'mm'>;
      /** Cloudiness factor that was used. [–] */
      readonly cloudiness: number;
      /** Whether that is the hour's own, under a high sun, and so the one to carry on. */
      readonly sunHigh: boolean;
      readonly assumed: readonly HourlyAssumption[];
      /** Measured values that cannot be and were not used. [code] */
      readonly refused: readonly HourlyValue[];
    }
  | {
      readonly etoMm: null;
      readonly etrMm: null;
      readonly reasons: readonly HourlyGap[];
      readonly refused: readonly HourlyValue[];
    };

/** Cloudiness where no hour with a high sun came before: Rs/Rso of 0.7, as the daily factor has it without sun. An assumption. [–] */
const ASSUMED_CLOUDINESS = 1.35 * 0.7 - 0.35;

/** What is known of an hour, or null where it is not. */
type Known = { readonly [Name in keyof CompleteHour]: CompleteHour[Name] | null };

/**
 * Reference evapotranspiration of an hour, ETo and ETr (ASCE-EWRI, Eq. 1 by the hour).
 *
 * Temperature, humidity, wind and solar radiation must be known: the procedures for missing data are for days. By night nothing need be
 * measured to know that no sun shone. Under a low sun the cloudiness of the last hour with a high sun stands in.
 *
 * @param hour - The hour as measured. [any]
 * @param station - Where it was measured, and by which clock. [any]
 * @param cloudinessBefore - Cloudiness factor of the last hour with a high sun, null when there is none. [–]
 * @returns Both values with cloudiness, assumed and refused inputs; or null with the reasons. [mm]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `LONGITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`, `CLOCK_HOUR_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, hourly calculation.
 * @example 0.606 and 0.720 for Fallon, Nevada, 1 July 2015, 10 to 11 h Pacific Standard Time
 */
export function hourlyReferenceEvapotranspiration(
  hour: WeatherHour,
  station: ClockedStation,
  cloudinessBefore: number | null = null,
): HourlyReferenceEvapotranspiration {
  const plausible = plausibleWeatherHour(hour);
  const { refused } = plausible;
  const sun = sunOfHour(hour, station);
  const known = knownOf(plausible.hour, sun);
  if (!isComplete(known)) return { etoMm: null, etrMm: null, reasons: gapsOf(known), refused };
  const elevation = station.elevation ?? ASSUMED_ELEVATION;
  const own = sun.high ? cloudinessFactor(known.solarRadiation, hourlyClearSkyRadiation(sun, known.vapourPressure, elevation)) : null;
  const cloudiness = own ?? cloudinessBefore ?? ASSUMED_CLOUDINESS;
  const terms = hourlyTerms(known, elevation, cloudiness);
  const assumptions: readonly [HourlyAssumption, boolean][] = [
    ['cloudiness', own === null && cloudinessBefore === null],
    ['wind-height', plausible.hour.windHeight === null],
    ['elevation', station.elevation === null],
  ];
  return {
    etoMm: shortHourlyReferenceEvapotranspiration(terms),
    etrMm: tallHourlyReferenceEvapotranspiration(terms),
    cloudiness,
    sunHigh: sun.high,
    assumed: assumptions.filter(([, assumed]) => assumed).map(([name]) => name),
    refused,
  };
}

function knownOf(hour: WeatherHour, sun: SunOfHour): Known {
  const dark = sun.extraterrestrialRadiation === 0 ? megajoulesPerSquareMetreHour(0) : null;
  return {
    airTemperature: hour.temperature,
    vapourPressure: vapourPressureOf(hour),
    windSpeedAt2M: hour.wind === null ? null : windSpeedAt2M(hour.wind, hour.windHeight ?? ASSUMED_WIND_HEIGHT),
    solarRadiation: hour.solar ?? dark,
  };
}

function vapourPressureOf({ temperature, dewPoint, humidity }: WeatherHour): Quantity<'kPa'> | null {
  if (dewPoint !== null) return vapourPressureFromDewPoint(dewPoint);
  return temperature === null || humidity === null ? null : vapourPressureFromHourlyHumidity(temperature, humidity);
}

const isComplete = (known: Known): known is CompleteHour => gapsOf(known).length === 0;

function gapsOf(known: Known): readonly HourlyGap[] {
  const gaps: readonly [HourlyGap, unknown][] = [
    ['no-temperature', known.airTemperature],
    ['no-humidity', known.vapourPressure],
    ['no-wind', known.windSpeedAt2M],
    ['no-solar-radiation', known.solarRadiation],
  ];
  return gaps.filter(([, value]) => value === null).map(([name]) => name);
}
