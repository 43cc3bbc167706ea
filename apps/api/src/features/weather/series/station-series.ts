import { judgeStationDays } from '@rillbook/agronomy/station-days/judge-station-days.js';
import type { StationDay } from '@rillbook/agronomy/station-days/station-day.js';
import { historyOf, lacksWeather, stationDays } from '@rillbook/agronomy/station-days/station-days.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { type MonthlyNormal, monthlyNormals } from '@rillbook/agronomy/weather/filling/monthly-normals.js';
import { neighbourStation, type StationPlace } from '@rillbook/agronomy/weather/filling/neighbour-station.js';
import type { JudgedDay } from '@rillbook/agronomy/weather/quality/judge-weather-days.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { RecordedValues, StationRow } from './station-record.repository.js';

/** The station whose days may stand in. */
export interface Neighbour {
  readonly station: StationRow;
  readonly distanceKm: number;
}

/** A station's own record, judged. */
export interface JudgedStation {
  readonly station: StationRow;
  readonly days: readonly JudgedDay[];
}

/** A station's days as they are reckoned with, and what is known of them as a whole. */
export interface StationSeries {
  readonly station: StationRow;
  readonly neighbour: Neighbour | null;
  readonly days: readonly StationDay[];
  /** what was measured, by date */
  readonly measured: ReadonlyMap<string, WeatherDay>;
  /** January first */
  readonly normals: readonly MonthlyNormal[];
}

/** The columns carry the units of the library's quantities. */
const known = <Unit extends string>(value: number | null): Quantity<Unit> | null => value as Quantity<Unit> | null;

const placeOf = (station: StationRow): StationPlace => ({
  latitude: station.latitude as Quantity<'°'>,
  longitude: station.longitude as Quantity<'°'>,
  elevation: known(station.elevationM),
});

const measuredOf = (row: RecordedValues): WeatherDay => ({
  dayOfYear: dayOfYear(row.date),
  tmax: known(row.tmax),
  tmin: known(row.tmin),
  rhmax: row.rhmax,
  rhmin: row.rhmin,
  dewPoint: known(row.dewPoint),
  wind: known(row.wind),
  windHeight: known(row.windHeight),
  solar: known(row.solar),
  rain: known(row.rain),
  givenEto: known(row.givenEto),
});

/** The neighbour of a station among all of an organization's: one in use that has days to lend. */
export function neighbourOf(station: StationRow, all: readonly StationRow[]): Neighbour | null {
  const others = all
    .filter((one) => one.isInUse && one.lastDay !== null && one.id !== station.id)
    .map((one) => ({ ...placeOf(one), station: one }));
  const found = neighbourStation(placeOf(station), others);
  return found && { station: found.neighbour.station, distanceKm: found.distance };
}

/** A station's record with its marks. */
export function judgedStation(station: StationRow, rows: readonly RecordedValues[]): JudgedStation {
  const days = rows.map((row) => ({ date: row.date, measured: measuredOf(row) }));
  return { station, days: judgeStationDays(days, placeOf(station)) };
}

/** Whether a neighbour's days could tell anything that the station's own do not. */
export const wantsNeighbour = ({ station, days }: JudgedStation, neighbour: Neighbour | null): boolean =>
  neighbour !== null && days.length > 0 && (lacksWeather(days) || (neighbour.station.lastDay ?? '') > (station.lastDay ?? ''));

/** The series of a judged station, completed by its neighbour's record where that was read. */
export function stationSeries(own: JudgedStation, neighbour: Neighbour | null, record: JudgedStation | null): StationSeries {
  const { station, days } = own;
  const reckoned = stationDays(days, placeOf(station), neighbour && record && { days: record.days, distanceKm: neighbour.distanceKm });
  return {
    station,
    neighbour,
    days: reckoned,
    measured: new Map(days.map(({ date, measured }) => [date, measured])),
    normals: monthlyNormals(historyOf(reckoned, days)),
  };
}
