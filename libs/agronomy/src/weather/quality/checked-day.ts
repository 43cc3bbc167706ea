import type { WeatherValue } from '../plausible-weather-day.js';
import type { WeatherDay } from '../weather-day.js';
import type { MarkReason } from './weather-mark.js';

/** A day as the checks take it: numbered, without impossible values. */
export type CheckedDay = {
  /** YYYY-MM-DD. */
  readonly date: string;
  /** Days since 1970-01-01: neighbouring days differ by one. */
  readonly number: number;
  readonly day: WeatherDay;
};

/** What a check found: the day by its place in the list, the value, and why. */
export type SuspectValue = { readonly at: number; readonly value: WeatherValue; readonly reason: MarkReason };

/**
 * The places of the days around one, by calendar and not by place in the list.
 *
 * @param days - The days, oldest first. [any]
 * @param reach - How many days before and after. [d]
 * @returns For each day the first and the last place of its surroundings. [–], one per day
 */
export function surroundings(days: readonly CheckedDay[], reach: number): readonly (readonly [first: number, last: number])[] {
  let [first, last] = [0, -1];
  return days.map(({ number }) => {
    while (days[first]!.number < number - reach) first += 1;
    while (last + 1 < days.length && days[last + 1]!.number <= number + reach) last += 1;
    return [first, last] as const;
  });
}
