import type { CheckedDay, SuspectValue } from './checked-day.js';

/** Values that a sensor measures anew each day; what a source states itself, and heights, may well stay the same. */
const VALUES = ['tmax', 'tmin', 'rhmax', 'rhmin', 'dewPoint', 'wind', 'solar', 'rain'] as const;

/** The same value on this many days in a row is doubted: with whole units it comes by chance about once in some years. Common practice. */
const SAME_DAYS = 4;

/** On this many days the sensor is stuck. Common practice, no source. */
const STUCK_DAYS = 6;

/** Nights at which the air is saturated are alike, and right. [%] */
const SATURATED = 99;

/**
 * Persistence: the same value on several days in a row.
 *
 * Nights of saturated air and days without rain are alike by nature and not counted. Equal rain is remarked and never refused.
 *
 * @param days - The days, oldest first. [any]
 * @returns What was found, on every day of the run. [code]
 * @source Common practice of station quality control; lengths without source.
 */
export function persistentValues(days: readonly CheckedDay[]): readonly SuspectValue[] {
  return VALUES.flatMap((value) =>
    runsOf(days, value).flatMap(([first, last]): SuspectValue[] => {
      const length = last - first + 1;
      const reason = length >= STUCK_DAYS && value !== 'rain' ? 'stuck' : 'same-for-days';
      return Array.from({ length }, (_, place) => ({ at: first + place, value, reason }));
    }),
  );
}

function runsOf(days: readonly CheckedDay[], value: (typeof VALUES)[number]): readonly (readonly [first: number, last: number])[] {
  const runs: (readonly [number, number])[] = [];
  let first = 0;
  for (let at = 1; at <= days.length; at++) {
    if (goesOn(days[at - 1], days[at], value)) continue;
    if (at - first >= SAME_DAYS) runs.push([first, at - 1]);
    first = at;
  }
  return runs;
}

function goesOn(before: CheckedDay | undefined, now: CheckedDay | undefined, value: (typeof VALUES)[number]): boolean {
  if (!before || !now || now.number !== before.number + 1) return false;
  const found = now.day[value];
  if (found === null || found !== before.day[value]) return false;
  return !(value === 'rain' && found === 0) && !(value === 'rhmax' && found >= SATURATED);
}
