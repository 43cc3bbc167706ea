import { type CheckedDay, type SuspectValue, surroundings } from './checked-day.js';

const VALUES = ['tmax', 'tmin', 'dewPoint'] as const;

/** A difference from the day before, or from the median of the days around, beyond this is doubted: fronts seldom bring more. Common practice, no source. [°C] */
const JUMP = 20;

/** There and back again by more than this within three days: no weather does it to a day's extremes. Common practice, no source. [°C] */
const SPIKE = 15;

/** Days before and after that a value is held against, of which this many must be known. An assumption. [d] */
const REACH = 3;
const LEAST_DAYS = 3;

type Temperature = (typeof VALUES)[number];

/**
 * Step: temperatures far from the day before, or from the days around.
 *
 * |T - T(day before)| > 20; |T - median(T of 3 days before and after)| > 20; a spike is there and back by more than 15
 *
 * Where the day after is back, the day itself is refused. Days far from the median of those around are doubted, and the good day after them
 * is not marked. Where a change stays, only its first day is doubted.
 *
 * @param days - The days, oldest first. [any]
 * @returns What was found; no change is told across a hole in the record. [code]
 * @source Common practice of station quality control; limits without source.
 */
export function stepChanges(days: readonly CheckedDay[]): readonly SuspectValue[] {
  const around = surroundings(days, REACH);
  return VALUES.flatMap((value) => {
    const change = changesOf(days, value);
    const isSpike = (at: number): boolean => {
      const [there = 0, back = 0] = [change[at], change[at + 1]];
      return there * back < 0 && Math.min(Math.abs(there), Math.abs(back)) > SPIKE;
    };
    const isFarOff = days.map((_, at) => isFarFromMedian(days, at, value, around[at]!));
    return change.flatMap((step, at): SuspectValue[] => {
      // The way back from a spike, or from days that are far off, is not a step of its own.
      if (isSpike(at) && !isSpike(at - 1)) return [{ at, value, reason: 'spike' }];
      const isJump = Math.abs(step) > JUMP && !isSpike(at - 1) && !isFarOff[at - 1];
      return isFarOff[at] || isJump ? [{ at, value, reason: 'jump' }] : [];
    });
  });
}

// What each day differs by from the day before; 0 where one of the two is not known.
function changesOf(days: readonly CheckedDay[], value: Temperature): readonly number[] {
  return days.map(({ number, day }, at) => {
    const before = days[at - 1];
    if (!before || before.number !== number - 1 || before.day[value] === null || day[value] === null) return 0;
    return day[value] - before.day[value];
  });
}

function isFarFromMedian(
  days: readonly CheckedDay[],
  at: number,
  value: Temperature,
  [first, last]: readonly [first: number, last: number],
): boolean {
  const here = days[at]!.day[value];
  if (here === null) return false;
  const others: number[] = [];
  let isFarFromAny = false;
  for (let other = first; other <= last; other += 1) {
    const found = days[other]!.day[value];
    if (other === at || found === null) continue;
    others.push(found);
    isFarFromAny ||= Math.abs(here - found) > JUMP;
  }
  if (!isFarFromAny || others.length < LEAST_DAYS) return false;
  others.sort((a, b) => a - b);
  const [low, high] = [others[(others.length - 1) >> 1]!, others[others.length >> 1]!];
  return Math.abs(here - (low + high) / 2) > JUMP;
}
