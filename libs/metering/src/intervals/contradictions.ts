import { type IntervalWeight, shareOfInterval } from './apportion-interval.js';
import { type CountedStretch, oneSourcePerInstant } from './one-source-per-instant.js';
import type { IntervalSource, UsageInterval } from './usage-interval.js';

/** Two sources that tell different volumes for the same time. */
export interface Contradiction {
  readonly fromLocalDay: number;
  readonly toLocalDay: number;
  readonly source: IntervalSource;
  readonly litres: number;
  readonly betterSource: IntervalSource;
  readonly betterLitres: number;
}

/** Standard deviations beyond which a difference is no longer resolution. */
const BEYOND_SDS = 4;

/** Share of an interval that crosses an end is this uncertain, as in the account. */
const SHARE_SD = 0.2;

/** A feed's volumes are joined to days; one that ends on a changed clock may reach a little further. [d] */
const ONE_DAY = 1.1;

/** A bill's days have no hours: its ends are uncertain by half a day. */
const BILL_END_SD_DAYS = 0.5;

/** Same meter, same time: what two sources may differ by in any case. */
const SMALLEST_RELATIVE_SD = 0.01;

/**
 * Contradictions between sources beyond resolution: an interval that better sources cover whole and that tells another volume.
 *
 * @param intervals - Usage intervals of one meter, of all sources, in any order. [L]
 * @param weightIn - Weight of a day, by interval, to divide those that cross an end. [mm]
 * @returns One for each interval that is contradicted, in order of time. [L]
 */
export function contradictions(intervals: readonly UsageInterval[], weightIn: IntervalWeight): readonly Contradiction[] {
  // One source has no other to contradict it.
  if (intervals.every(({ source }) => source === intervals[0]?.source)) return [];
  const found: Contradiction[] = [];
  for (const interval of intervals.filter(({ source }) => source !== 'usage')) {
    const better = oneSourcePerInstant(intervals.filter((other) => isBetter(other, interval) && overlaps(other, interval)));
    const contradiction = contradicted(interval, better, weightIn);
    if (contradiction) found.push(contradiction);
  }
  return found.sort((a, b) => a.fromLocalDay - b.fromLocalDay);
}

function isBetter(other: UsageInterval, { source }: UsageInterval): boolean {
  return source === 'bills' ? other.source !== 'bills' : other.source === 'usage';
}

function overlaps(other: UsageInterval, interval: UsageInterval): boolean {
  return other.fromLocalDay < interval.toLocalDay && other.toLocalDay > interval.fromLocalDay;
}

// All water of a day may have run on one side of an hour: timers water by night. That of longer intervals follows the weather.
function cutVariance({ fromLocalDay, toLocalDay, litres }: UsageInterval, share: number): number {
  const isOneDay = toLocalDay - fromLocalDay <= ONE_DAY;
  return (isOneDay ? 1 : SHARE_SD ** 2 * share * (1 - share)) * share * (1 - share) * litres ** 2;
}

function contradicted(interval: UsageInterval, better: readonly CountedStretch[], weightIn: IntervalWeight): Contradiction | null {
  const { fromLocalDay, toLocalDay } = interval;
  const days = toLocalDay - fromLocalDay;
  let covered = 0;
  let litres = 0;
  let variance = interval.sdLitres ** 2 + (SMALLEST_RELATIVE_SD * interval.litres) ** 2;
  for (const stretch of better) {
    const from = Math.max(stretch.from, fromLocalDay);
    const to = Math.min(stretch.to, toLocalDay);
    if (to <= from) continue;
    const { interval: other } = stretch;
    const share = shareOfInterval([other.fromLocalDay, other.toLocalDay], [from, to], weightIn(other));
    covered += to - from;
    litres += share * other.litres;
    variance += (share * other.sdLitres) ** 2 + cutVariance(other, share);
  }
  if (better.length === 0 || covered < days - 1e-9) return null;
  if (interval.source === 'bills') variance += 2 * (BILL_END_SD_DAYS * (Math.max(litres, interval.litres) / days)) ** 2;
  if (Math.abs(litres - interval.litres) <= BEYOND_SDS * Math.sqrt(variance)) return null;
  const betterSource = better[0]?.interval.source ?? 'usage';
  return { fromLocalDay, toLocalDay, source: interval.source, litres: interval.litres, betterSource, betterLitres: litres };
}
