import type { WeatherDay } from './weather-day.js';

/** A raw value of a weather day by its name. */
export type WeatherValue = Exclude<keyof WeatherDay, 'dayOfYear'>;

/** A day without the values that nature does not make, and which those were. */
export type PlausibleWeatherDay = { readonly day: WeatherDay; readonly refused: readonly WeatherValue[] };

/**
 * Widest range in which each value is believed. Common practice of station quality control, chosen wider than the world's records;
 * the radiation's upper end is above the highest extraterrestrial radiation (FAO-56, Eq. 21) of every latitude north of 70° south, 45.6; at the
 * South Pole that reaches 48.5, of which a clear sky lets some 39 through (Eq. 37).
 */
export const PLAUSIBLE_RANGES: Readonly<Record<WeatherValue, readonly [number, number]>> = {
  tmax: [-60, 60],
  tmin: [-70, 50],
  rhmax: [1, 105],
  rhmin: [0, 105],
  dewPoint: [-60, 35],
  wind: [0, 50],
  windHeight: [0.5, 100],
  solar: [0, 46],
  rain: [0, 2000],
  givenEto: [0, 30],
};

/** The ranges as a list, made once: this runs for every day of every station. */
const RANGE_LIST = Object.entries(PLAUSIBLE_RANGES) as readonly [WeatherValue, readonly [number, number]][];

/**
 * Sets aside the values of a day that cannot be: outside their range, or contradicting each other.
 *
 * Values are taken out and never mended: where the lowest exceeds the highest, both go, since nobody knows which one is wrong.
 *
 * @param day - The day as measured. [any]
 * @returns The day with impossible values as null, and the names of those. [any]
 * @source Common practice: ranges of station quality control, as in ASCE-EWRI (2005), Appendix D, in spirit.
 */
export function plausibleWeatherDay(day: WeatherDay): PlausibleWeatherDay {
  const refused: WeatherValue[] = [];
  for (const [name, [lowest, highest]] of RANGE_LIST) {
    const value = day[name];
    if (value !== null && !(value >= lowest && value <= highest)) refused.push(name);
  }
  if (exceeds(day.tmin, day.tmax)) refused.push('tmin', 'tmax');
  if (exceeds(day.rhmin, day.rhmax)) refused.push('rhmin', 'rhmax');
  if (exceeds(day.dewPoint, day.tmax)) refused.push('dewPoint');
  if (refused.length === 0) return { day, refused };
  const blanks = Object.fromEntries(refused.map((name) => [name, null]));
  return { day: { ...day, ...blanks }, refused: [...new Set(refused)] };
}

function exceeds(low: number | null, high: number | null): boolean {
  return low !== null && high !== null && low > high;
}
