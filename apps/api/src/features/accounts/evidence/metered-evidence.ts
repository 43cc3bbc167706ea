import type { UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import { oneSourcePerInstant } from '@rillbook/metering/intervals/one-source-per-instant.js';

/** Shorter pieces of a feed are joined to months, as if a register had been read: then they are judged as readings are. [d] */
const DAYS_OF_PIECE = 30;
/** A feed with more missing is not taken as whole. */
const MOST_MISSING = 0.02;

/** Intervals of one source per instant, in order of time: those that a better source cuts are left out, since nobody knows how they divide. */
export function wholeIntervals(intervals: readonly UsageInterval[]): UsageInterval[] {
  return oneSourcePerInstant(intervals)
    .filter(({ interval, from, to }) => from === interval.fromLocalDay && to === interval.toLocalDay)
    .map(({ interval }) => interval)
    .sort((a, b) => a.fromLocalDay - b.fromLocalDay);
}

/** A feed's volumes, month by month as readings would tell them; those of its holes are left out. */
export function feedAsReadings(intervals: readonly UsageInterval[]): UsageInterval[] {
  const feed = intervals.filter(({ source }) => source === 'usage');
  const pieces: UsageInterval[] = [];
  let from = 0;
  for (let at = 0; at < feed.length; at++) {
    const next = feed[at + 1];
    const isHole = next !== undefined && next.fromLocalDay - feed[at]!.toLocalDay > MOST_MISSING * DAYS_OF_PIECE;
    const isFull = feed[at]!.toLocalDay - feed[from]!.fromLocalDay >= DAYS_OF_PIECE;
    if (isFull) pieces.push(joined(feed.slice(from, at + 1)));
    if (isFull || isHole) from = at + 1;
  }
  return pieces;
}

function joined(feed: readonly UsageInterval[]): UsageInterval {
  return {
    fromLocalDay: feed[0]!.fromLocalDay,
    toLocalDay: feed.at(-1)!.toLocalDay,
    litres: feed.reduce((sum, { litres }) => sum + litres, 0),
    sdLitres: 0,
    source: 'readings',
  };
}
