import { dayOfYear } from '../weather/day-of-year.js';
import { dateOfDay, dayNumber } from '../weather/day-number.js';
import type { HistoryDay } from '../weather/filling/monthly-normals.js';
import { lackingValues, neighbourValues } from '../weather/filling/neighbour-values.js';
import type { JudgedDay } from '../weather/quality/judge-weather-days.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import { etoFromNeighbour } from './eto-from-neighbour.js';
import { etoOfJudgedDay } from './eto-of-judged-day.js';
import { fillFromNormals } from './fill-from-normals.js';
import { rainOfDay } from './rain-of-day.js';
import type { DayEto, StationDay } from './station-day.js';

/** The station next to the one at hand. */
export type NeighbourRecord = { readonly days: readonly JudgedDay[]; readonly distanceKm: number };

/** An anemometer is moved seldom: its height is asked of so many days around. An assumption. [d] */
const HEIGHT_WITHIN_DAYS = 45;

const NOTHING_MEASURED: Omit<WeatherDay, 'dayOfYear'> = {
  tmax: null,
  tmin: null,
  rhmax: null,
  rhmin: null,
  dewPoint: null,
  wind: null,
  windHeight: null,
  solar: null,
  rain: null,
  givenEto: null,
};

/**
 * The days of a station as they are reckoned with: refused values left to the procedure for missing data, days without reference
 * evapotranspiration filled from the neighbour, else, a few in a month, from the station's own normals.
 *
 * Rain is the station's, else the neighbour's, else not known, each with how far it may be off. The days run from the station's first day to its last, or to
 * the neighbour's last where that is later.
 *
 * @param days - The station's judged days, oldest first. [any]
 * @param station - Where they were measured. [any]
 * @param neighbour - The neighbour's judged days and distance, or null. [any]
 * @returns The days, without holes in the calendar. [mm], one per day
 * @throws {DomainError} As `referenceEvapotranspiration`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 3 and Annex 4; distances and shares are assumptions.
 */
export function stationDays(days: readonly JudgedDay[], station: WeatherStation, neighbour: NeighbourRecord | null): readonly StationDay[] {
  if (days.length === 0) return [];
  const [own, others] = [byNumber(days), byNumber(neighbour?.days ?? [])];
  const first = dayNumber(days[0]!.date);
  const last = Math.max(dayNumber(days.at(-1)!.date), ...[...others.keys()].slice(-1));
  const rainNeighbour = neighbour && { days: others, distanceKm: neighbour.distanceKm };
  const reckoned = Array.from({ length: last - first + 1 }, (_, at): StationDay => {
    const number = first + at;
    const judged = own.get(number) ?? null;
    const date = judged?.date ?? dateOfDay(number);
    const measured = judged ? etoOfJudgedDay(judged, station) : NOT_RECORDED;
    const filled = measured.etoMm === null ? filledByNeighbour(date, judged, { own, others, station }) : null;
    return { date, marks: judged?.marks ?? [], eto: filled ?? measured, ...rainOfDay(number, own, rainNeighbour) };
  });
  return fillFromNormals(reckoned, historyOf(reckoned, days));
}

/**
 * Whether a station's judged days leave anything that a neighbour could tell.
 *
 * @param days - The station's judged days, oldest first. [any]
 * @returns True where a day, its temperatures or its rain is missing. [code]
 */
export function lacksWeather(days: readonly JudgedDay[]): boolean {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return false;
  return (
    dayNumber(last.date) - dayNumber(first.date) + 1 > days.length ||
    days.some(({ usable }) => usable.rain === null || (usable.givenEto === null && lackingValues(usable).length > 0))
  );
}

/**
 * Days of which the reference evapotranspiration was measured at the station itself, as history for its normals.
 *
 * @param reckoned - The days as reckoned. [mm], one per day
 * @param days - The station's judged days. [any]
 * @returns The history. [mm], one per day
 */
export function historyOf(reckoned: readonly StationDay[], days: readonly JudgedDay[]): readonly HistoryDay[] {
  const own = new Map(days.map(({ date, usable }) => [date, usable]));
  return reckoned.flatMap(({ date, eto }) => {
    if (eto.etoMm === null || eto.filling !== null) return [];
    const measured = own.get(date);
    return [{ date, etoMm: eto.etoMm, relativeSd: eto.relativeSd, tmax: measured?.tmax ?? null, tmin: measured?.tmin ?? null }];
  });
}

const NOT_RECORDED: DayEto = { etoMm: null, filling: null, reason: 'not-recorded' };

type Both = {
  readonly own: ReadonlyMap<number, JudgedDay>;
  readonly others: ReadonlyMap<number, JudgedDay>;
  readonly station: WeatherStation;
};

function filledByNeighbour(date: string, judged: JudgedDay | null, { own, others, station }: Both): DayEto | null {
  const values = neighbourValues(date, lackingValues(judged?.usable ?? null), own, others);
  const measured = judged?.usable ?? { dayOfYear: dayOfYear(date), ...NOTHING_MEASURED };
  // The carried wind is as at the station's own height, which its own days tell.
  const windHeight = measured.windHeight ?? heightNear(dayNumber(date), own);
  return etoFromNeighbour({ ...measured, windHeight }, values, station);
}

// Height of the station's anemometer on the nearest day that states it.
function heightNear(number: number, own: ReadonlyMap<number, JudgedDay>): WeatherDay['windHeight'] {
  for (let away = 1; away <= HEIGHT_WITHIN_DAYS; away++) {
    const height = own.get(number - away)?.usable.windHeight ?? own.get(number + away)?.usable.windHeight ?? null;
    if (height !== null) return height;
  }
  return null;
}

const byNumber = (days: readonly JudgedDay[]): ReadonlyMap<number, JudgedDay> => new Map(days.map((day) => [dayNumber(day.date), day]));
