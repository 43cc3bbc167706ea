import { DomainError } from '@rillbook/units/domain-error.js';

/** ET weight of a local day by day number; null where reference evapotranspiration is not known. */
export type DayWeight = (dayNumber: number) => number | null;

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
  const [from, to] = interval;
  if (!(from < to && part[0] >= from && part[1] <= to && part[0] <= part[1]))
    throw new DomainError('INTERVAL_OUT_OF_DOMAIN', { interval, part });
  // Within one day its weight cancels: the many hourly intervals take this way.
  if (Math.ceil(to) - Math.floor(from) <= 1) return (part[1] - part[0]) / (to - from);
  let [known, sum] = [0, 0];
  for (let day = Math.floor(from); day < to; day += 1) {
    const weight = dayWeight(day);
    if (weight === null) continue;
    known += 1;
    sum += weight;
  }
  const weightOf = sum > 0 ? (day: number) => dayWeight(day) ?? sum / known : () => 1;
  const whole = weigh(from, to, weightOf);
  return whole > 0 ? weigh(part[0], part[1], weightOf) / whole : (part[1] - part[0]) / (to - from);
}

function weigh(from: number, to: number, weightOf: (day: number) => number): number {
  let sum = 0;
  for (let day = Math.floor(from); day < to; day += 1) sum += weightOf(day) * (Math.min(to, day + 1) - Math.max(from, day));
  return sum;
}
