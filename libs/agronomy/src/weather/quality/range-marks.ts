import { plausibleWeatherDay } from '../plausible-weather-day.js';
import type { WeatherDay } from '../weather-day.js';
import { weatherMark, type WeatherMark } from './weather-mark.js';

/** Air holds no more than this; a sensor in fog may read a little above. [%] */
const SATURATED = 100;

/**
 * Range: what nature does not make, and humidities above saturation.
 *
 * @param measured - The day as measured. [any]
 * @returns Its marks. [code]
 * @source FAO Irrigation and Drainage Paper 56, Annex 5, and ASCE-EWRI (2005), Appendix D, in spirit and from memory: relative humidity above
 * 100 % asks for a calibration; the other ranges are those of `plausibleWeatherDay`.
 */
export function rangeMarks(measured: WeatherDay): readonly WeatherMark[] {
  const { day, refused } = plausibleWeatherDay(measured);
  const humid = (['rhmax', 'rhmin'] as const).filter((value) => (day[value] ?? 0) > SATURATED);
  return [...refused.map((value) => weatherMark(value, 'impossible')), ...humid.map((value) => weatherMark(value, 'above-saturation'))];
}
