import { DomainError } from '@rillbook/units/domain-error.js';
import type { UsageInterval } from './usage-interval.js';

/** ET weight of a local day by day number; null where reference evapotranspiration is not known. */
export type DayWeight = (dayNumber: number) => number | null;

/** Weight of the days of an interval, which may differ from interval to interval. */
export type IntervalWeight = (interval: Pick<UsageInterval, 'fromLocalDay' | 'toLocalDay' | 'litres'>) => DayWeight;

/**
 * Weights for a meter that also passes a steady use: that use counts every day alike, only what is beside it follows the weather; an interval
 * that holds no more than the steady use is divided by days.
 *
 * @param steadyLitresPerDay - What runs every day alike, indoors; 0 where nothing does. [L/d]
 * @param dayWeight - ET weight of a day. [mm]
 * @returns The weight of a day, by interval. [L] where something is steady, else [mm]
 */
export function weightBesideSteadyUse(steadyLitresPerDay: number, dayWeight: DayWeight): IntervalWeight {
  if (steadyLitresPerDay === 0) return () => dayWeight;
  return ({ fromLocalDay: from, toLocalDay: to, litres }) => {
    const rest = litres - steadyLitresPerDay * (to - from);
    if (rest <= 0) return () => null;
    const shareOf = sharesOfInterval([from, to], dayWeight);
    return (day) => {
      const [begin, end] = [Math.max(from, day), Math.min(to, day + 1)];
      return steadyLitresPerDay + (rest * shareOf(begin, end)) / (end - begin);
    };
  };
}

/**
 * Share of an interval's volume that falls between two instants within it, by the days' ET weight, by day count where that is unknown.
 *
 * A day counts with its weight times the share of it that is covered; a day of unknown weight counts as the mean of the known ones; where
 * none is known, or all are zero, days count alike.
 *
 * @param interval - Begin and end of the interval, as local day numbers. [d]
 * @param part - Begin and end of the part, within the interval. [d]
 * @param dayWeight - ET weight of a day. [mm]
 * @returns Share of the volume, 0 to 1. [–]
 * @throws {DomainError} `INTERVAL_OUT_OF_DOMAIN` when the interval has no length or the part leaves it.
 */
export function shareOfInterval(interval: readonly [number, number], part: readonly [number, number], dayWeight: DayWeight): number {
  return sharesOfInterval(interval, dayWeight)(part[0], part[1]);
}

/**
 * Shares of one interval's volume, for whoever asks for many parts of it: as `shareOfInterval`.
 *
 * @param interval - Begin and end of the interval, as local day numbers. [d]
 * @param dayWeight - ET weight of a day. [mm]
 * @returns The share of a part, by its begin and end. [–]
 * @throws {DomainError} `INTERVAL_OUT_OF_DOMAIN` when the interval has no length; the share, when the part leaves it.
 */
export function sharesOfInterval(interval: readonly [number, number], dayWeight: DayWeight): (begin: number, end: number) => number {
  const [from, to] = interval;
  const checked = (begin: number, end: number) => {
    if (!(from < to && begin >= from && end <= to && begin <= end))
      throw new DomainError('INTERVAL_OUT_OF_DOMAIN', { interval: [from, to], part: [begin, end] });
  };
  checked(from, to);
  const byDays = (begin: number, end: number) => (end - begin) / (to - from);
  // Within one day its weight cancels: the many hourly intervals take this way.
  const isByDays = Math.ceil(to) - Math.floor(from) <= 1;
  const weights = isByDays ? [] : weightsOf(from, to, dayWeight);
  const whole = isByDays ? 0 : weigh(weights, from, from, to);
  return (begin, end) => {
    checked(begin, end);
    return whole > 0 ? weigh(weights, from, begin, end) / whole : byDays(begin, end);
  };
}

function weightsOf(from: number, to: number, dayWeight: DayWeight): number[] {
  const weights: (number | null)[] = [];
  let [known, sum] = [0, 0];
  for (let day = Math.floor(from); day < to; day += 1) {
    const weight = dayWeight(day);
    weights.push(weight);
    if (weight === null) continue;
    known += 1;
    sum += weight;
  }
  return weights.map((weight) => (sum > 0 ? (weight ?? sum / known) : 1));
}

function weigh(weights: readonly number[], first: number, from: number, to: number): number {
  let sum = 0;
  for (let day = Math.floor(from); day < to; day += 1)
    sum += (weights[day - Math.floor(first)] as number) * (Math.min(to, day + 1) - Math.max(from, day));
  return sum;
}
