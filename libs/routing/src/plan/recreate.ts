import type { RandomSource } from '../random-source.js';
import { bestPlace } from './best-place.kernel.js';
import type { RouteBook } from './route-book.js';

/** How many of the stops that have no place are tried again in one round. */
const TRIED_AGAIN = 10;

/** Stops without a place: those taken out just now are all put back, of the others only some are tried. */
export interface LooseStops {
  readonly removed: readonly number[];
  readonly absent: readonly number[];
}

type Weight = (book: RouteBook, stop: number) => number;

// Orders in which stops are put back, and how often each is taken. The smallest weight goes first.
const ORDERS: readonly (readonly [chance: number, weight: Weight])[] = [
  [4, ({ plan }, stop) => -(plan.service[stop * plan.classes] as number) - (plan.load[stop] as number)],
  [2, ({ plan }, stop) => -wayFromStart(plan, stop)],
  [1, ({ plan }, stop) => wayFromStart(plan, stop)],
  [1, ({ plan }, stop) => firstWindow(plan, stop, 1) - firstWindow(plan, stop, 0)],
  [1, ({ plan }, stop) => firstWindow(plan, stop, 0)],
  [2, ({ plan }, stop) => -(plan.leaveOut[stop] as number)],
];
const BY_CHANCE_ALONE = 4;

const wayFromStart = (plan: RouteBook['plan'], stop: number): number =>
  plan.days > 0 ? (plan.travel[(plan.start[0] as number) * plan.places + (plan.place[stop] as number)] as number) : 0;

function firstWindow(plan: RouteBook['plan'], stop: number, side: 0 | 1): number {
  const at = plan.windows.from[stop * plan.classes] as number;
  return (side === 0 ? plan.windows.opens[at] : plan.windows.closes[at]) ?? 0;
}

/**
 * Puts stops back one by one, each where it costs least; what costs more than leaving it out, or fits nowhere, stays without a place.
 *
 * @param book - The routes; those that take a stop are replaced by longer copies and reckoned anew. [–]
 * @param loose - Stops without a place: taken out just now, and from before. [–]
 * @param random - Where chance comes from. [–]
 * @returns The stops that still have none, and the days that took some. [–]
 */
export function recreate(
  book: RouteBook,
  loose: LooseStops,
  random: RandomSource,
): { readonly absent: number[]; readonly days: ReadonlySet<number> } {
  const waiting = [...loose.absent];
  const again: number[] = [];
  while (waiting.length > 0 && again.length < TRIED_AGAIN) again.push(...waiting.splice(Math.floor(random() * waiting.length), 1));
  const days = new Set<number>();
  for (const stop of inSomeOrder(book, [...loose.removed, ...again], random)) {
    const { day, position, cost } = bestPlace(book, stop, random);
    if (day < 0 || cost > (book.plan.leaveOut[stop] as number)) {
      waiting.push(stop);
      book.dayOf[stop] = -1;
      continue;
    }
    book.routes[day] = (book.routes[day] as number[]).toSpliced(position, 0, stop);
    book.reckon(day);
    days.add(day);
  }
  return { absent: waiting, days };
}

function inSomeOrder(book: RouteBook, stops: number[], random: RandomSource): readonly number[] {
  for (let at = stops.length - 1; at > 0; at -= 1) {
    const other = Math.floor(random() * (at + 1));
    [stops[at], stops[other]] = [stops[other] as number, stops[at] as number];
  }
  let draw = random() * (BY_CHANCE_ALONE + ORDERS.reduce((sum, [chance]) => sum + chance, 0));
  for (const [chance, weight] of ORDERS) {
    draw -= chance;
    if (draw < 0) return stops.sort((one, other) => weight(book, one) - weight(book, other));
  }
  return stops;
}
