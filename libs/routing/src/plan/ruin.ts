import type { RandomSource } from '../random-source.js';
import type { RouteBook } from './route-book.js';

/** Settings of the method as its authors found them best. */
const MEAN_REMOVED = 10;
const LONGEST_STRING = 10;
const SPLIT_CHANCE = 0.5;
const SPLIT_STOP_CHANCE = 0.01;

/** What a ruin took out, and which crew days it touched. */
export interface Ruin {
  readonly removed: number[];
  readonly days: Set<number>;
}

/**
 * Takes strings of stops that are near each other out of a few routes (adjacent string removal). Locked stops stay.
 *
 * @param book - The routes; those touched are replaced by shorter copies and reckoned anew. [–]
 * @param random - Where chance comes from. [–]
 * @returns The stops taken out and the days touched. [–]
 * @source Christiaens, J. and Vanden Berghe, G. (2020), Slack Induction by String Removals for Vehicle Routing Problems, Transportation Science
 * 54(2), 417-433.
 */
export function ruin(book: RouteBook, random: RandomSource): Ruin {
  const { plan } = book;
  const used = book.routes.reduce((count, route) => count + Number(route.length > 0), 0);
  const longest = Math.min(LONGEST_STRING, Math.max(1, plan.stops / Math.max(1, used)));
  const strings = Math.floor(random() * ((4 * MEAN_REMOVED) / (1 + longest) - 1) + 1);
  const seed = Math.floor(random() * plan.stops);
  const found: Ruin = { removed: [], days: new Set() };
  for (const stop of plan.near[seed] as Int32Array) {
    if (found.days.size >= strings) break;
    const day = book.dayOf[stop] as number;
    if (day < 0 || plan.locked[stop] || found.days.has(day)) continue;
    const route = book.routes[day] as number[];
    const length = Math.min(route.length, Math.floor(random() * Math.max(1, Math.min(longest, route.length)) + 1));
    const gone = new Set(stringWith(route, stop, { length, random }).filter((one) => !plan.locked[one]));
    found.days.add(day);
    for (const one of gone) {
      found.removed.push(one);
      book.dayOf[one] = -1;
    }
    book.routes[day] = route.filter((one) => !gone.has(one));
  }
  for (const day of found.days) book.reckon(day);
  return found;
}

// A stretch of a route with the stop in it; half the time with some stops in its middle that stay.
function stringWith(
  route: readonly number[],
  stop: number,
  { length, random }: { readonly length: number; readonly random: RandomSource },
): readonly number[] {
  let kept = 0;
  if (length > 1 && length < route.length && random() < SPLIT_CHANCE) {
    kept = 1;
    while (length + kept < route.length && random() > SPLIT_STOP_CHANCE) kept += 1;
  }
  const whole = length + kept;
  const at = route.indexOf(stop);
  const first = Math.max(0, at - whole + 1);
  const last = Math.min(at, route.length - whole);
  const from = first + Math.floor(random() * (last - first + 1));
  const keepFrom = from + Math.floor(random() * (length + 1));
  return route.slice(from, from + whole).filter((_, index) => kept === 0 || from + index < keepFrom || from + index >= keepFrom + kept);
}
