import type { Quantity } from '@rillbook/units/quantity.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import { windSpeedAt2M } from './air/wind-speed-at-2-m.js';
import { ASSUMED_ELEVATION, ASSUMED_WIND, ASSUMED_WIND_HEIGHT, type AssumedInput } from './assumed-input.js';
import type { CompleteDay, Site } from './methods/complete-day.js';
import { standardizedClearSkyRadiation } from './methods/standardized-terms.js';
import { solarRadiationFromTemperature } from './radiation/solar-radiation-from-temperature.js';
import { extraterrestrialRadiation } from './sun/extraterrestrial-radiation.js';
import { vapourPressureFromDewPoint } from './vapour/vapour-pressure-from-dew-point.js';
import {
  type DayTemperatures,
  vapourPressureFromHumidityExtremes,
  vapourPressureFromMaximumHumidity,
  vapourPressureFromMinimumHumidity,
} from './vapour/vapour-pressure-from-humidity.js';

/** A value, and what had to be assumed for it. */
type Found<Value> = { readonly value: Value; readonly assumed: readonly AssumedInput[] };

/** Nothing was assumed. */
const NOTHING: readonly AssumedInput[] = [];

/** A complete day and its site, with everything that was assumed to complete them. */
export type CompletedDay = { readonly day: CompleteDay; readonly site: Site; readonly assumed: readonly AssumedInput[] };

/**
 * The two temperatures of a day, where both were measured.
 *
 * @param measured - The day as measured. [any]
 * @returns Highest and lowest temperature, or null. [°C]
 */
export function measuredTemperatures(measured: WeatherDay): DayTemperatures | null {
  return measured.tmax === null || measured.tmin === null ? null : { maximumTemperature: measured.tmax, minimumTemperature: measured.tmin };
}

/**
 * Whether anything of humidity, wind or sun was measured, so that the combination equation says more than the temperatures.
 *
 * @param measured - The day as measured. [any]
 * @returns True when one of them was. [–]
 */
export function hasMoreThanTemperatures(measured: WeatherDay): boolean {
  return [measured.dewPoint, measured.rhmax, measured.rhmin, measured.wind, measured.solar].some((value) => value !== null);
}

/**
 * Completes a day whose temperatures were measured, by the procedures for missing data (FAO-56, chapter 3).
 *
 * Vapour pressure from the dew point, else from both humidities, else from the highest, else from the lowest, else from Tdew = Tmin;
 * wind else 2 m/s; solar radiation else from the temperature range (Eq. 50, interior), never above a clear sky's.
 *
 * @param measured - The day as measured. [any]
 * @param temperatures - Its highest and lowest temperature. [°C]
 * @param station - Where it was measured. [any]
 * @returns The day complete, its site, and codes of what was assumed. [any]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 3, estimating missing climatic data.
 * @example ea 1.68, Rs 22.29, u2 2 for Lyon in July, FAO-56 Example 20
 */
export function completeWeatherDay(measured: WeatherDay, temperatures: DayTemperatures, station: WeatherStation): CompletedDay {
  const site: Site = { latitude: station.latitude, elevation: station.elevation ?? ASSUMED_ELEVATION };
  const vapour = vapourPressureOf(measured, temperatures);
  const wind = windOf(measured);
  const solar = solarOf(measured, temperatures, vapour.value, site);
  const day: CompleteDay = {
    dayOfYear: measured.dayOfYear,
    maximumTemperature: temperatures.maximumTemperature,
    minimumTemperature: temperatures.minimumTemperature,
    vapourPressure: vapour.value,
    windSpeedAt2M: wind.value,
    solarRadiation: solar.value,
  };
  const elevation: readonly AssumedInput[] = station.elevation === null ? ['elevation'] : NOTHING;
  return { day, site, assumed: vapour.assumed.concat(wind.assumed, solar.assumed, elevation) };
}

function vapourPressureOf(day: WeatherDay, temperatures: DayTemperatures): Found<Quantity<'kPa'>> {
  const { dewPoint, rhmax, rhmin } = day;
  if (dewPoint !== null) return { value: vapourPressureFromDewPoint(dewPoint), assumed: NOTHING };
  if (rhmax !== null && rhmin !== null) return { value: vapourPressureFromHumidityExtremes(temperatures, rhmax, rhmin), assumed: NOTHING };
  if (rhmax !== null) return { value: vapourPressureFromMaximumHumidity(temperatures, rhmax), assumed: NOTHING };
  if (rhmin !== null) return { value: vapourPressureFromMinimumHumidity(temperatures, rhmin), assumed: NOTHING };
  return { value: vapourPressureFromDewPoint(temperatures.minimumTemperature), assumed: ['humidity'] };
}

function windOf(day: WeatherDay): Found<Quantity<'m/s'>> {
  if (day.wind === null) return { value: ASSUMED_WIND, assumed: ['wind'] };
  if (day.windHeight === null) return { value: windSpeedAt2M(day.wind, ASSUMED_WIND_HEIGHT), assumed: ['wind-height'] };
  return { value: windSpeedAt2M(day.wind, day.windHeight), assumed: NOTHING };
}

function solarOf(
  measured: WeatherDay,
  temperatures: DayTemperatures,
  vapourPressure: Quantity<'kPa'>,
  site: Site,
): Found<Quantity<'MJ/m2/d'>> {
  if (measured.solar !== null) return { value: measured.solar, assumed: NOTHING };
  const limits = {
    extraterrestrialRadiation: extraterrestrialRadiation(site.latitude, measured.dayOfYear),
    clearSkyRadiation: standardizedClearSkyRadiation({ dayOfYear: measured.dayOfYear, vapourPressure }, site),
  };
  return { value: solarRadiationFromTemperature(temperatures, limits, 'interior'), assumed: ['solar-radiation'] };
}
