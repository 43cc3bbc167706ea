import { evapotranspirationSd } from '../evapotranspiration/evapotranspiration-sd.js';
import { referenceEvapotranspiration } from '../evapotranspiration/reference-evapotranspiration.js';
import { doubtedSd } from '../weather/quality/doubted-sd.js';
import { type JudgedDay, judgeWeatherDays } from '../weather/quality/judge-weather-days.js';
import { weatherMark } from '../weather/quality/weather-mark.js';
import type { RecordedDay } from '../weather/recorded-day.js';
import type { WeatherStation } from '../weather/weather-station.js';

/** Standard deviations of both together beyond which two values of one day contradict each other. Common practice, no source. */
const MOST_DEVIATIONS = 3;

/** Where little evaporates, shares say nothing: what is nearer than this is no contradiction. An assumption. [mm] */
const LEAST_DISTANCE = 1;

/**
 * Judges the days of a station as `judgeWeatherDays` does, and reference evapotranspiration as the source states it against what the day's own
 * values give.
 *
 * |ETo(stated) - ETo(computed)| > 3 · √(sd(stated)² + sd(computed)²), and > 1 mm
 *
 * Inches among millimetres, a sum of several days, a logger that reports 0: what stands in for missing values must not be those.
 *
 * @param days - The station's record, in any order; each date once. [any]
 * @param station - Where it was measured. [any]
 * @returns The days, oldest first, each with its marks. [any], one per day
 * @throws {DomainError} As `judgeWeatherDays`.
 * @source As `judgeWeatherDays`; the stated value by common practice, no source.
 */
export function judgeStationDays(days: readonly RecordedDay[], station: WeatherStation): readonly JudgedDay[] {
  return judgeWeatherDays(days, station).map((day) => (isFarFromComputed(day, station) ? withoutGiven(day) : day));
}

function isFarFromComputed(day: JudgedDay, station: WeatherStation): boolean {
  const given = day.usable.givenEto;
  if (given === null) return false;
  const computed = referenceEvapotranspiration({ ...day.usable, givenEto: null }, station);
  if (computed.etoMm === null) return false;
  const relativeSd = Math.hypot(computed.relativeSd, doubtedSd(day, false));
  const sd = Math.hypot(evapotranspirationSd('given', []) * given, relativeSd * computed.etoMm);
  return Math.abs(given - computed.etoMm) > Math.max(LEAST_DISTANCE, MOST_DEVIATIONS * sd);
}

const withoutGiven = (day: JudgedDay): JudgedDay => ({
  ...day,
  marks: [...day.marks, weatherMark('givenEto', 'far-from-computed')],
  usable: { ...day.usable, givenEto: null },
});
