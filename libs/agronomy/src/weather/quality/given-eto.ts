import { evapotranspirationSd } from '../../evapotranspiration/evapotranspiration-sd.js';
import { referenceEvapotranspiration } from '../../evapotranspiration/reference-evapotranspiration.js';
import type { WeatherStation } from '../weather-station.js';
import { doubtedSd } from './doubted-sd.js';
import type { JudgedDay } from './judge-weather-days.js';
import { weatherMark, type WeatherMark } from './weather-mark.js';

/** Standard deviations of both together beyond which two values of one day contradict each other. Common practice, no source. */
const MOST_DEVIATIONS = 3;

/** Where little evaporates, shares say nothing: what is nearer than this is no contradiction. An assumption. [mm] */
const LEAST_DISTANCE = 1;

/**
 * Range: reference evapotranspiration as the source states it against what the day's own values give.
 *
 * |ETo(stated) - ETo(computed)| > 3 · √(sd(stated)² + sd(computed)²), and > 1 mm
 *
 * Inches among millimetres, a month's sum, a station that reports 0: what stands in for missing values must not be those.
 *
 * @param day - The day, judged by all other checks. [any]
 * @param station - Where it was measured. [any]
 * @returns The mark of the stated value; none where there is nothing to hold it against. [code]
 * @throws {DomainError} As `referenceEvapotranspiration`.
 * @source Common practice, no source.
 */
export function givenEtoMarks(day: JudgedDay, station: WeatherStation): readonly WeatherMark[] {
  const given = day.usable.givenEto;
  if (given === null) return [];
  const computed = referenceEvapotranspiration({ ...day.usable, givenEto: null }, station);
  if (computed.etoMm === null) return [];
  const relativeSd = Math.hypot(computed.relativeSd, doubtedSd(day, false));
  const sd = Math.hypot(evapotranspirationSd('given', []) * given, relativeSd * computed.etoMm);
  const isFar = Math.abs(given - computed.etoMm) > Math.max(LEAST_DISTANCE, MOST_DEVIATIONS * sd);
  return isFar ? [weatherMark('givenEto', 'far-from-computed')] : [];
}
