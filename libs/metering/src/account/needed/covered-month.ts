import { dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { missingWeather, type MissingWeather } from '../../volumes/missing-weather.js';
import { UncertainInputs } from '../../uncertainty/uncertain-input.js';
import { DAYS_BEFORE_MONTH, type WeatherSeries } from '../../volumes/weather-series.js';
import type { AccountFacts } from '../account-input.js';

/**
 * The month as far as it is covered, with the weather, the ET weight of each covered day, and which of them have no weather. `weatherFrom`
 * is the day number of the first known weather among the days that lead up to the month, the first of these days where the station's weather
 * began before them; at the latest the month's first. `inputs` are the property's uncertain inputs.
 */
export interface CoveredMonth {
  readonly month: string;
  readonly firstDay: number;
  readonly days: number;
  readonly daysInMonth: number;
  readonly weather: WeatherSeries;
  readonly weatherFrom: number;
  readonly etWeights: Float64Array;
  readonly missing: MissingWeather;
  readonly inputs: UncertainInputs;
}

/**
 * The covered days of an account's month with their weather.
 *
 * @param of - The month and the last complete date. [code]
 * @param weather - The weather. [mm], one per day
 * @param inputs - The property's uncertain inputs; its own where the month stands alone. [code]
 * @returns The month; without any day where none is complete. [d] and [mm]
 * @throws {DomainError} `MONTH_INVALID` or `LOCAL_DATE_INVALID` where there is no such month or date.
 */
export function coveredMonth(
  of: Pick<AccountFacts, 'month' | 'through'>,
  weather: WeatherSeries,
  inputs = new UncertainInputs(),
): CoveredMonth {
  const months = known.get(weather) ?? new Map<string, Omit<CoveredMonth, 'inputs'>>();
  known.set(weather, months);
  const key = `${of.month} ${of.through}`;
  const present = months.get(key) ?? covered(of, weather);
  months.set(key, present);
  return { ...present, inputs };
}

/** Many properties have the weather of one station: what a month has of it is the same for all of them. */
const known = new WeakMap<WeatherSeries, Map<string, Omit<CoveredMonth, 'inputs'>>>();

function covered(of: Pick<AccountFacts, 'month' | 'through'>, weather: WeatherSeries): Omit<CoveredMonth, 'inputs'> {
  const { firstDay, days: daysInMonth } = daysOfMonth(of.month);
  const endDay = of.through === null ? firstDay : Math.min(dayNumberOfDate(of.through) + 1, firstDay + daysInMonth);
  const days = Math.max(0, endDay - firstDay);
  const weights = etWeights(weather, firstDay, days);
  return {
    month: of.month,
    firstDay,
    days,
    daysInMonth,
    weather,
    weatherFrom: weatherFrom(weather, firstDay),
    etWeights: weights,
    missing: missingWeather(weather, firstDay, weights),
  };
}

/**
 * Whether reference evapotranspiration of any day of a span is known.
 *
 * @param series - The weather. [mm], one per day
 * @param from - Day number of the first day. [d]
 * @param until - Day number after the last day. [d]
 * @returns True from one known day on. [code]
 */
export function hasEto(series: WeatherSeries, from: number, until: number): boolean {
  const { firstDay, etoMm } = series;
  return etoMm.subarray(Math.max(0, from - firstDay), Math.max(0, until - firstDay)).some((eto) => eto >= 0);
}

function weatherFrom(weather: WeatherSeries, firstOfMonth: number): number {
  const { firstDay, etoMm } = weather;
  const first = firstOfMonth - DAYS_BEFORE_MONTH;
  if (hasEto(weather, firstDay, first)) return first;
  let day = Math.max(firstDay, first);
  while (day < firstOfMonth && !((etoMm[day - firstDay] ?? Number.NaN) >= 0)) day += 1;
  return Math.min(day, firstOfMonth);
}

// A day of unknown weather weighs as much as the mean of the others.
function etWeights({ firstDay, etoMm }: WeatherSeries, from: number, days: number): Float64Array {
  const weights = new Float64Array(days);
  let known = 0;
  let sum = 0;
  for (let day = 0; day < days; day += 1) {
    const eto = etoMm[from + day - firstDay] ?? Number.NaN;
    weights[day] = eto;
    if (eto >= 0) {
      known += 1;
      sum += eto;
    }
  }
  const mean = known > 0 ? sum / known : 1;
  for (let day = 0; day < days; day += 1) if (Number.isNaN(weights[day])) weights[day] = mean;
  return weights;
}
