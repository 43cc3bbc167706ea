import { monthOfDate } from '../day-number.js';
import type { CheckedDay, SuspectValue } from './checked-day.js';

/** Values whose days spread evenly to both sides of the month's mean; wind, rain and radiation do not. */
const VALUES = ['tmax', 'tmin', 'dewPoint'] as const;

/** Days of one month of the year that a station must know before it can say what is usual: two years' worth. An assumption. */
const LEAST_DAYS = 60;

/** Standard deviations from the month's mean beyond which a value is unusual: about one day in 30,000 by chance. Common practice. */
const MOST_DEVIATIONS = 4;

/** A spread below this is a record too even to judge by. An assumption. [°C] */
const LEAST_SPREAD = 0.5;

type Spread = { readonly mean: number; readonly sd: number };

/**
 * Range of the station itself: temperatures far from what it measures in that month of the year.
 *
 * |T - mean(month)| > 4 · sd(month)
 *
 * @param days - The days, oldest first. [any]
 * @returns What was found; nothing in months of which the station knows fewer than 60 days. [code]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when a day's date is not written as YYYY-MM-DD.
 * @source ASCE-EWRI (2005), Appendix D, in spirit and from memory: extremes are held against the station's long record. Limits are common
 * practice.
 */
export function unusualValues(days: readonly CheckedDay[]): readonly SuspectValue[] {
  const months = days.map(({ date }) => monthOfDate(date) - 1);
  return VALUES.flatMap((value) => {
    const found = Array.from({ length: 12 }, (): number[] => []);
    days.forEach(({ day }, at) => {
      if (day[value] !== null) found[months[at]!]!.push(day[value]);
    });
    const usual = found.map(spreadOf);
    return days.flatMap(({ day }, at): SuspectValue[] => {
      const [here, spread] = [day[value], usual[months[at]!]];
      if (here === null || !spread) return [];
      return Math.abs(here - spread.mean) > MOST_DEVIATIONS * spread.sd ? [{ at, value, reason: 'unusual-for-station' }] : [];
    });
  });
}

function spreadOf(values: readonly number[]): Spread | null {
  if (values.length < LEAST_DAYS) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  return sd < LEAST_SPREAD ? null : { mean, sd };
}
