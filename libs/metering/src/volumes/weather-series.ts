import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { DomainError } from '@rillbook/units/domain-error.js';

/** One local day of weather: null is not known, never zero. `etoRelativeSd` is the relative standard deviation of the day's ETo. */
export interface AccountDay {
  readonly date: string;
  readonly etoMm: number | null;
  readonly rainMm: number | null;
  readonly etoRelativeSd: number;
}

/** Weather day by day without holes in the calendar; a day that nobody sent is not known. */
export interface WeatherSeries {
  readonly firstDay: number;
  readonly etoMm: readonly (number | null)[];
  readonly rainMm: readonly (number | null)[];
  readonly etoRelativeSd: readonly number[];
}

/** The root zone's balance begins this many days before the month. */
export const DAYS_BEFORE_MONTH = 90;

/**
 * Weather from 90 days before a month (later if weather starts later) to the last day covered.
 *
 * @param days - Weather days in any order; others are ignored. [mm], one per day
 * @param firstOfMonth - Day number of the month's first. [d]
 * @param endDay - Day number after the last one covered. [d]
 * @returns The series, which begins no later than the month. [mm], one per day
 * @throws {DomainError} `WEATHER_DAY_INVALID` when a value is below zero or not finite.
 */
export function weatherSeries(days: readonly AccountDay[], firstOfMonth: number, endDay: number): WeatherSeries {
  const numbered = days
    .map((day) => [dayNumberOfDate(day.date), checked(day)] as const)
    .filter(([number, day]) => number >= firstOfMonth - DAYS_BEFORE_MONTH && number < endDay && day.etoMm !== null);
  const firstDay = Math.min(firstOfMonth, ...numbered.map(([number]) => number));
  const byNumber = new Map(days.map((day) => [dayNumberOfDate(day.date), day]));
  const series = Array.from({ length: Math.max(0, endDay - firstDay) }, (_, index) => byNumber.get(firstDay + index));
  return {
    firstDay,
    etoMm: series.map((day) => day?.etoMm ?? null),
    rainMm: series.map((day) => day?.rainMm ?? null),
    etoRelativeSd: series.map((day) => day?.etoRelativeSd ?? 0),
  };
}

function checked(day: AccountDay): AccountDay {
  const good = (value: number | null) => value === null || (value >= 0 && Number.isFinite(value));
  if (!(good(day.etoMm) && good(day.rainMm) && day.etoRelativeSd >= 0)) throw new DomainError('WEATHER_DAY_INVALID', { ...day });
  return day;
}
