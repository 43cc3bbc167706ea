import { saturationVapourPressure } from '../vapour/saturation-vapour-pressure.js';
import type { WeatherHour } from './weather-hour.js';

/** A measured value of a weather hour by its name. */
export type HourlyValue = Exclude<keyof WeatherHour, 'dayOfYear' | 'middleHour'>;

/** An hour without the values that nature does not make, and which those were. */
export type PlausibleWeatherHour = { readonly hour: WeatherHour; readonly refused: readonly HourlyValue[] };

/**
 * Widest range in which each value is believed. Common practice of station quality control, chosen wider than the world's records; the
 * radiation's upper end is the solar constant on the day when the sun is nearest (4.92 · 1.033).
 */
const RANGES: Readonly<Record<HourlyValue, readonly [number, number]>> = {
  temperature: [-70, 60],
  dewPoint: [-70, 35],
  humidity: [0, 105],
  wind: [0, 60],
  windHeight: [0.5, 100],
  solar: [0, 5.09],
};

/** The ranges as a list, made once. */
const RANGE_LIST = Object.entries(RANGES) as readonly [HourlyValue, readonly [number, number]][];

/** Dew point and temperature are measured apart, so that fog may read above saturation by the errors of both; more than this is a fault. An assumption. [–] */
const HIGHEST_SATURATION = 1.1;

/**
 * Sets aside the values of an hour that cannot be: outside their range, or a dew point far above the temperature.
 *
 * @param hour - The hour as measured. [any]
 * @returns The hour with impossible values as null, and the names of those. [any]
 * @source Common practice: ranges of station quality control.
 */
export function plausibleWeatherHour(hour: WeatherHour): PlausibleWeatherHour {
  const refused = RANGE_LIST.filter(([name, [lowest, highest]]) => {
    const value = hour[name];
    return value !== null && !(value >= lowest && value <= highest);
  }).map(([name]) => name);
  const blanks = Object.fromEntries(refused.map((name) => [name, null]));
  const within: WeatherHour = refused.length === 0 ? hour : { ...hour, ...blanks };
  if (!isSupersaturated(within)) return { hour: within, refused };
  return { hour: { ...within, dewPoint: null }, refused: [...refused, 'dewPoint'] };
}

function isSupersaturated({ temperature, dewPoint }: WeatherHour): boolean {
  if (temperature === null || dewPoint === null) return false;
  return saturationVapourPressure(dewPoint) > HIGHEST_SATURATION * saturationVapourPressure(temperature);
}
