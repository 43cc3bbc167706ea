import type { IntervalSource, UsageInterval } from './usage-interval.js';

/** A stretch of one interval that counts: where no better source covers the same instant. */
export interface CountedStretch {
  readonly interval: UsageInterval;
  readonly from: number;
  readonly to: number;
}

const RANK: Readonly<Record<IntervalSource, number>> = { usage: 0, readings: 1, bills: 2 };

/**
 * One source per instant: usage, else readings, else bills; of one source the shorter interval first. Volumes are never added.
 *
 * @param intervals - Usage intervals of one meter, of all sources, in any order. [L]
 * @returns Stretches that count, which nowhere overlap. [d], as local day numbers
 */
export function oneSourcePerInstant(intervals: readonly UsageInterval[]): readonly CountedStretch[] {
  const ranked = intervals
    .filter(({ fromLocalDay, toLocalDay }) => toLocalDay > fromLocalDay)
    .sort((a, b) => RANK[a.source] - RANK[b.source] || length(a) - length(b) || a.fromLocalDay - b.fromLocalDay);
  const covered: [number, number][] = [];
  const counted: CountedStretch[] = [];
  for (const interval of ranked) {
    for (const [from, to] of uncovered(covered, interval.fromLocalDay, interval.toLocalDay)) counted.push({ interval, from, to });
    cover(covered, interval.fromLocalDay, interval.toLocalDay);
  }
  return counted;
}

function length({ fromLocalDay, toLocalDay }: UsageInterval): number {
  return toLocalDay - fromLocalDay;
}

function uncovered(covered: readonly [number, number][], from: number, to: number): readonly [number, number][] {
  const free: [number, number][] = [];
  let at = from;
  for (const [begin, end] of covered) {
    if (end <= at) continue;
    if (begin >= to) break;
    if (begin > at) free.push([at, begin]);
    at = end;
  }
  if (at < to) free.push([at, to]);
  return free;
}

// Keeps the covered spans in order and apart; neighbours that touch become one, so that an hourly feed stays a single span.
function cover(covered: [number, number][], from: number, to: number): void {
  const first = covered.findIndex(([, end]) => end >= from);
  const at = first < 0 ? covered.length : first;
  let last = at;
  let begin = from;
  let finish = to;
  while (last < covered.length && (covered[last] as [number, number])[0] <= to) {
    const [otherBegin, otherEnd] = covered[last] as [number, number];
    begin = Math.min(begin, otherBegin);
    finish = Math.max(finish, otherEnd);
    last += 1;
  }
  covered.splice(at, last - at, [begin, finish]);
}
