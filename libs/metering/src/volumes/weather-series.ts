import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * One local day of weather: null is not known, never zero. `etoRelativeSd` is the relative standard deviation of the day's ETo; `rainSdMm` how
 * far the day's rain may be off by itself, or how much may have fallen where it is not known; `filledFrom` says where the ETo is from when the
 * station itself did not measure it, `rainFrom` the same of the rain.
 */
export interface AccountDay {
  readonly date: string;
  readonly etoMm: number | null;
  readonly rainMm: number | null;
  readonly etoRelativeSd: number;
  readonly rainSdMm?: number;
  readonly filledFrom?: 'neighbour' | 'normals';
  readonly rainFrom?: 'neighbour';
}

/**
 * Weather of consecutive days from `firstDay` on, without holes in the calendar; what is not known is NaN, never zero. `filledDays` are the
 * days, by place, whose ETo the station itself did not measure, `neighbourRain` those whose rain a neighbour measured. `rainSdMm` is absent
 * where no day's rain is off by itself.
 */
export interface WeatherSeries {
  readonly firstDay: number;
  readonly etoMm: Float64Array;
  readonly rainMm: Float64Array;
  readonly etoRelativeSd: Float64Array;
  readonly rainSdMm?: Float64Array;
  readonly filledDays?: ReadonlyMap<number, 'neighbour' | 'normals'>;
  readonly neighbourRain?: ReadonlySet<number>;
}

/** The root zone's balance begins this many days before the month. */
export const DAYS_BEFORE_MONTH = 90;

/**
 * Weather days as a series by day number.
 *
 * @param days - Weather days in any order; of two for one date the last counts. [mm], one per day
 * @returns The series from the first to the last of them; a day that nobody sent is not known. [mm], one per day
 * @throws {DomainError} `WEATHER_DAY_INVALID` when a value is below zero or not finite.
 */
export function weatherSeries(days: readonly AccountDay[]): WeatherSeries {
  const numbers = days.map((day) => dayNumberOfDate(checked(day).date));
  const firstDay = numbers.length === 0 ? 0 : numbers.reduce((first, number) => Math.min(first, number));
  const length = numbers.length === 0 ? 0 : numbers.reduce((last, number) => Math.max(last, number)) - firstDay + 1;
  const filledDays = new Map<number, 'neighbour' | 'normals'>();
  const neighbourRain = new Set<number>();
  const rainSdMm = days.some((day) => day.rainSdMm) ? { rainSdMm: new Float64Array(length) } : {};
  const etoRelativeSd = new Float64Array(length);
  const series = { firstDay, etoMm: notKnown(length), rainMm: notKnown(length), etoRelativeSd, ...rainSdMm, filledDays, neighbourRain };
  days.forEach((day, index) => {
    const at = (numbers[index] as number) - firstDay;
    series.etoMm[at] = day.etoMm ?? Number.NaN;
    series.rainMm[at] = day.rainMm ?? Number.NaN;
    series.etoRelativeSd[at] = day.etoRelativeSd;
    if (rainSdMm.rainSdMm) rainSdMm.rainSdMm[at] = day.rainSdMm ?? 0;
    if (day.filledFrom) filledDays.set(at, day.filledFrom);
    if (day.rainFrom) neighbourRain.add(at);
  });
  return series;
}

/**
 * Reference evapotranspiration of a day of the series.
 *
 * @param series - The weather. [mm], one per day
 * @param day - Day number. [d]
 * @returns The day's value, null where it is not known or lies outside. [mm]
 */
export function etoOfDay(series: WeatherSeries, day: number): number | null {
  const eto = series.etoMm[day - series.firstDay];
  return eto === undefined || Number.isNaN(eto) ? null : eto;
}

function notKnown(length: number): Float64Array {
  return new Float64Array(length).fill(Number.NaN);
}

function checked(day: AccountDay): AccountDay {
  const good = (value: number | null) => value === null || (value >= 0 && Number.isFinite(value));
  if (!(good(day.etoMm) && good(day.rainMm) && good(day.rainSdMm ?? null) && day.etoRelativeSd >= 0))
    throw new DomainError('WEATHER_DAY_INVALID', { ...day });
  return day;
}
