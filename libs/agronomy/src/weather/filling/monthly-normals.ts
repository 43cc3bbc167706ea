import type { Quantity } from '@rillbook/units/quantity.js';
import { monthOfDate } from '../day-number.js';

/** A day of a station's history, with the reference evapotranspiration computed from what was measured there. */
export type HistoryDay = {
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly etoMm: Quantity<'mm'>;
  /** Standard deviation over value. [–] */
  readonly relativeSd: number;
  readonly tmax: Quantity<'°C'> | null;
  readonly tmin: Quantity<'°C'> | null;
};

/** What is usual at a station in one month of the year; or why that is not known. */
export type MonthlyNormal = {
  /** 1 for January. [–] */
  readonly month: number;
  /** Days of that month in the history. [d] */
  readonly days: number;
} & (
  | {
      /** Mean of the days. [mm] */
      readonly etoMm: Quantity<'mm'>;
      /** How far a single day may be off the mean: the spread of the days and the error of each. [–] */
      readonly etoRelativeSd: number;
      readonly tmax: Quantity<'°C'> | null;
      readonly tmin: Quantity<'°C'> | null;
      readonly reason: null;
    }
  | { readonly etoMm: null; readonly etoRelativeSd: null; readonly tmax: null; readonly tmin: null; readonly reason: 'too-few-days' }
);

/** Days of a month of the year that the history must hold. An assumption: two thirds of one month. */
const LEAST_DAYS = 20;

const MONTHS = 12;

/**
 * What is usual at a station in each month of the year: the mean of the days of its own history.
 *
 * ETo = mean(ETo of the days); sd/ETo = √((sd(days)/ETo)² + mean(relative sd)²)
 *
 * @param days - Days measured at the station, in any order; never filled ones. [mm], one per day
 * @returns Twelve months, January first; a month with fewer than 20 days is null with the reason. [mm]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when a day's date is not so written.
 * @source Common practice: the mean of a record in place of what is missing. The number of days is an assumption.
 */
export function monthlyNormals(days: readonly HistoryDay[]): readonly MonthlyNormal[] {
  const months = Array.from({ length: MONTHS }, (): HistoryDay[] => []);
  for (const day of days) months[monthOfDate(day.date) - 1]!.push(day);
  return months.map((each, index) => normalOf(index + 1, each));
}

function normalOf(month: number, days: readonly HistoryDay[]): MonthlyNormal {
  const unknown = { month, days: days.length, etoMm: null, etoRelativeSd: null, tmax: null, tmin: null } as const;
  const mean = days.reduce((sum, { etoMm }) => sum + etoMm, 0) / days.length;
  // A mean of nothing has no relative spread.
  if (days.length < LEAST_DAYS || mean <= 0) return { ...unknown, reason: 'too-few-days' };
  const spread = Math.sqrt(days.reduce((sum, { etoMm }) => sum + (etoMm - mean) ** 2, 0) / (days.length - 1));
  const own = days.reduce((sum, { relativeSd }) => sum + relativeSd, 0) / days.length;
  return {
    month,
    days: days.length,
    etoMm: mean as Quantity<'mm'>,
    etoRelativeSd: Math.hypot(spread / mean, own),
    tmax: meanOf(days.map(({ tmax }) => tmax)),
    tmin: meanOf(days.map(({ tmin }) => tmin)),
    reason: null,
  };
}

function meanOf(values: readonly (Quantity<'°C'> | null)[]): Quantity<'°C'> | null {
  const known = values.filter((value) => value !== null);
  if (known.length < LEAST_DAYS) return null;
  return (known.reduce<number>((sum, value) => sum + value, 0) / known.length) as Quantity<'°C'>;
}
