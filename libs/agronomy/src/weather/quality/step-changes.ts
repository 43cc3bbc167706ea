import type { CheckedDay, SuspectValue } from './checked-day.js';

const VALUES = ['tmax', 'tmin', 'dewPoint'] as const;

/** A change from the day before beyond this is doubted: fronts seldom bring more. Common practice, no source. [°C] */
const JUMP = 20;

/** There and back again by more than this within three days: no weather does it to a day's extremes. Common practice, no source. [°C] */
const SPIKE = 15;

/**
 * Step: temperatures far from the day before.
 *
 * Where the day after is back, the day itself is wrong and the day after is not marked; where it stays, only the change is doubted.
 *
 * @param days - The days, oldest first. [any]
 * @returns What was found; nothing across a hole in the record. [code]
 * @source Common practice of station quality control; limits without source.
 */
export function stepChanges(days: readonly CheckedDay[]): readonly SuspectValue[] {
  return VALUES.flatMap((value) => {
    const change = days.map(({ number, day }, at) => {
      const before = days[at - 1];
      if (!before || before.number !== number - 1 || before.day[value] === null || day[value] === null) return 0;
      return day[value] - before.day[value];
    });
    const isSpike = (at: number): boolean => {
      const [there = 0, back = 0] = [change[at], change[at + 1]];
      return there * back < 0 && Math.min(Math.abs(there), Math.abs(back)) > SPIKE;
    };
    return change.flatMap((step, at): SuspectValue[] => {
      // The way back from a spike is not a step of its own.
      if (isSpike(at) && !isSpike(at - 1)) return [{ at, value, reason: 'spike' }];
      return Math.abs(step) > JUMP && !isSpike(at - 1) ? [{ at, value, reason: 'jump' }] : [];
    });
  });
}
