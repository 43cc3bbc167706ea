import type { PlanInput } from '../plan-input.js';
import type { Ground } from '../pricing/assignment.js';
import type { EffortLeft } from '../search/effort.js';
import { GOOD_GAP, searchPrograms } from '../search/search-programs.js';
import { fitStarts } from './fitting/fit-starts.js';
import type { FittedStarts } from './fitting/lay-out.js';

/** Shares of the hours that are tried, the longest first. [–] */
const SHARES = [0.85, 0.7];
/** What each search in shorter hours may look at, beside the work that is left: its part of it, so that something is left for the next. */
const A_SEARCH = { nodes: 10_000, visits: 200, looks: 10_000 };
const SHARE_OF_WORK = 0.3;
/** Steps of work that finding and laying out may take together. */
const MOST_WORK = 15_000_000;
/** Of those that came near so many are laid out beside the best. */
const MOST_OTHERS = 2;

/** What is to be bettered: starts that fit, and what the same would cost if it needed neither soaks nor start times. [–] */
interface ToBetter {
  readonly fitted: FittedStarts;
  readonly costBeforeLayout: number;
}

/**
 * Programs that fit with their soaks from the outset: where fitting starts and soaks into the hours has made the best choice dear, other days and
 * programs are looked for as if the hours were shorter, and then laid into the whole of them.
 *
 * @param input - The controller. [code]
 * @param ground - What was searched on. [–]
 * @param open - Weekdays on which any program may run. [d]
 * @param toBetter - What is known. [–]
 * @param left - What may be looked at; changed to what is left. [–]
 * @returns The cheapest that fits: what is known, where nothing betters it. [–]
 */
export function inShorterHours(input: PlanInput, ground: Ground, open: number, toBetter: ToBetter, left: EffortLeft): FittedStarts {
  const kept = Math.max(0, left.work - MOST_WORK);
  left.work -= kept;
  const best = betterIn(input, ground, open, toBetter, left);
  left.work += kept;
  return best;
}

function betterIn(input: PlanInput, ground: Ground, open: number, toBetter: ToBetter, left: EffortLeft): FittedStarts {
  let best = toBetter.fitted;
  for (const share of SHARES) {
    if (left.work <= 0 || toBetter.costBeforeLayout >= best.cost * (1 - GOOD_GAP)) break;
    const shorter = shorterBy(ground, share);
    const effort = { ...A_SEARCH, layouts: left.layouts, work: left.work * SHARE_OF_WORK };
    const found = searchPrograms(shorter, open, { known: Number.POSITIVE_INFINITY, effort });
    left.work -= SHARE_OF_WORK * left.work - effort.work;
    if (!found) break;
    const fitted = fitStarts(input, ground, [found.assignment, ...found.others.slice(0, MOST_OTHERS)], left);
    if (fitted.cost < best.cost) best = fitted;
  }
  return best;
}

function shorterBy(ground: Ground, share: number): Ground {
  const { hours } = ground.frame;
  const cut = (minutes: number) => minutes * share;
  const shorter = { ...hours, longest: hours.longest.map(cut), longestOfDate: hours.longestOfDate.map(cut) };
  return { ...ground, perDay: ground.perDay * share, frame: { ...ground.frame, hours: shorter } };
}
