import { type IntervalWeight, sharesOfInterval } from './apportion-interval.js';
import { oneSourcePerInstant } from './one-source-per-instant.js';
import type { UsageInterval } from './usage-interval.js';

/** One local day's metered water: litres of the share of the day that any source covers, 0 to 1. */
export interface MeteredDay {
  readonly litres: number;
  readonly coveredShare: number;
}

/** Water apportioned to local days, with the variances that come from registers and from dividing intervals at the window's ends. */
export interface MeteredDays {
  readonly days: readonly MeteredDay[];
  readonly resolutionVariance: number;
  readonly apportioningVariance: number;
}

/** Seconds of a day are lost when instants become day numbers; a day this nearly covered is covered. */
const ALMOST = 1e-6;

/**
 * Apportions a meter's intervals to local days: by ET weight, by day count where that is unknown, one source per instant.
 *
 * @param intervals - Usage intervals of one meter, of all sources, in any order. [L]
 * @param firstDay - First local day wanted, as a day number. [d]
 * @param days - Number of days wanted. [d]
 * @param weightIn - Weight of a day, by interval. [mm]
 * Where an interval is cut, two things are not known: how its water follows the weather (sd = share's · share · (1 − share) · volume) and on
 * which side of the cut the nearest run fell (sd = run's · the interval's mean day).
 *
 * @param cutSd - How uncertain a cut interval is. [–]
 * @param cutSd.share - By its share: sd over share · (1 − share) · volume. [–]
 * @param cutSd.run - By the run nearest to the cut, in mean days of the interval. [d]
 * @returns Litres and covered share of each day, and the variances of their sum. [L] and [L2]
 */
export function meteredDays(
  intervals: readonly UsageInterval[],
  firstDay: number,
  days: number,
  weightIn: IntervalWeight,
  cutSd: { readonly share: number; readonly run: number },
): MeteredDays {
  const litres = new Array<number>(days).fill(0);
  const covered = new Array<number>(days).fill(0);
  const shares = new Map<UsageInterval, number>();
  for (const { interval, from: counted, to } of oneSourcePerInstant(intervals)) {
    const begin = Math.max(counted, firstDay);
    const end = Math.min(to, firstDay + days);
    if (!(begin < end)) continue;
    const shareOf = sharesOfInterval([interval.fromLocalDay, interval.toLocalDay], weightIn(interval));
    for (let day = Math.floor(begin); day < end; day += 1) {
      const [from, until] = [Math.max(begin, day), Math.min(end, day + 1)];
      const share = shareOf(from, until);
      litres[day - firstDay] = (litres[day - firstDay] ?? 0) + share * interval.litres;
      covered[day - firstDay] = (covered[day - firstDay] ?? 0) + until - from;
      shares.set(interval, (shares.get(interval) ?? 0) + share);
    }
  }
  let resolutionVariance = 0;
  let apportioningVariance = 0;
  for (const [interval, share] of shares) {
    resolutionVariance += (share * interval.sdLitres) ** 2;
    const cuts = Number(interval.fromLocalDay < firstDay) + Number(interval.toLocalDay > firstDay + days);
    const meanDay = interval.litres / (interval.toLocalDay - interval.fromLocalDay);
    apportioningVariance += (cutSd.share * share * Math.max(0, 1 - share) * interval.litres) ** 2;
    apportioningVariance += cuts * (cutSd.run * Math.min(meanDay, interval.litres)) ** 2;
  }
  const whole = (share: number) => (share > 1 - ALMOST ? 1 : share);
  return {
    days: litres.map((each, day) => ({ litres: each, coveredShare: whole(covered[day] ?? 0) })),
    resolutionVariance,
    apportioningVariance,
  };
}
