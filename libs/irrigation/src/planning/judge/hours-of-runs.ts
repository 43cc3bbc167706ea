import type { OpenHours } from '../layout/water-window.js';

const DAY = 1440;
const DUST = 1e-6;

/** When watering begins and ends, minutes after midnight, and whether all of it lies within the hours. [min] */
interface HoursOfRuns {
  readonly beginsAt: number;
  readonly endsAt: number;
  readonly isWithin: boolean;
}

/**
 * When the first run of a night begins and the last one ends. A night begins with the hours where nothing runs outside them, else after the
 * longest time of the day in which nothing runs: what begins before the hours is the night's first run, not its last.
 *
 * @param runs - Runs of all days. [min]
 * @param hours - The hours that are meant for them. [min]
 * @returns Minutes after midnight, both alike where something always runs; null where nothing runs. [min]
 */
export function hoursOfRuns(runs: readonly { readonly begin: number; readonly end: number }[], hours: OpenHours): HoursOfRuns | null {
  if (!runs.length) return null;
  let [earliest, last] = [Number.POSITIVE_INFINITY, 0];
  for (const { begin, end } of runs) {
    const after = aroundTheDay(begin - hours.from);
    earliest = Math.min(earliest, after);
    last = Math.max(last, after + end - begin);
  }
  const isWithin = last <= hours.minutes + DUST;
  const times = () => runs.map(({ begin, end }) => ({ after: aroundTheDay(begin - hours.from), minutes: end - begin }));
  const [first, end] = isWithin ? [earliest, last] : nightOf(times(), last);
  return { beginsAt: aroundTheDay(hours.from + first), endsAt: aroundTheDay(hours.from + end), isWithin };
}

// What runs past the end of the circle covers its beginning.
function nightOf(times: readonly { readonly after: number; readonly minutes: number }[], last: number): readonly [number, number] {
  const inOrder = [...times].sort((one, other) => one.after - other.after);
  let reach = last - DAY;
  let widest = { begin: 0, gap: 0 };
  for (const { after, minutes } of inOrder) {
    if (after - reach > widest.gap) widest = { begin: after, gap: after - reach };
    reach = Math.max(reach, after + minutes);
  }
  return [widest.begin, widest.begin - widest.gap];
}

function aroundTheDay(minutes: number): number {
  return ((minutes % DAY) + DAY) % DAY;
}
