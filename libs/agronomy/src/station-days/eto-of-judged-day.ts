import { referenceEvapotranspiration } from '../evapotranspiration/reference-evapotranspiration.js';
import { doubtedSd } from '../weather/quality/doubted-sd.js';
import type { JudgedDay } from '../weather/quality/judge-weather-days.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import type { DayEto } from './station-day.js';

/**
 * Reference evapotranspiration of a judged day, from what may be used of it; doubted values make it less sure. Where the source states a
 * value itself, that is taken instead as soon as it is surer.
 *
 * sd = √(sd(method, assumed)² + sd(doubted)²)
 *
 * @param day - The judged day. [any]
 * @param station - Where it was measured. [any]
 * @returns The value with its relative standard deviation, or null with the reason. [mm]
 * @throws {DomainError} As `referenceEvapotranspiration`.
 * @source As `referenceEvapotranspiration` and `doubtedSd`.
 */
export function etoOfJudgedDay(day: JudgedDay, station: WeatherStation): DayEto {
  const given = dayEto(day, { ...day.usable, tmax: null, tmin: null }, station);
  const eto = dayEto(day, day.usable, station);
  return given.etoMm !== null && eto.etoMm !== null && given.relativeSd < eto.relativeSd ? given : eto;
}

function dayEto(day: JudgedDay, usable: WeatherDay, station: WeatherStation): DayEto {
  const eto = referenceEvapotranspiration(usable, station);
  if (eto.etoMm === null) {
    const isRefused = day.marks.some(({ value, effect }) => effect === 'refused' && (value === 'tmax' || value === 'tmin'));
    return { etoMm: null, filling: null, reason: isRefused ? 'temperatures-refused' : eto.reason };
  }
  const { etoMm, method, assumed, relativeSd } = eto;
  return { etoMm, method, assumed, relativeSd: Math.hypot(relativeSd, doubtedSd(day, method === 'given')), filling: null, reason: null };
}
