import type { RandomSource } from '../random-source.js';
import { beginAt, type RouteBook } from './route-book.js';

/** Chance that a place is passed over, so that a search does not always do the same. */
const BLINK = 0.01;

/** Where a stop costs least; `day` −1 where it fits nowhere. */
export interface BestPlace {
  day: number;
  position: number;
  cost: number;
}

/**
 * Where in all routes a stop adds the least cost while every hour, window, load and skill still holds.
 *
 * @param book - The routes as they stand. [–]
 * @param stop - The stop. [–]
 * @param random - Where chance comes from; null looks at every place. [–]
 * @returns Crew day, position in its route and the cost added. [s]
 */
export function bestPlace(book: RouteBook, stop: number, random: RandomSource | null): BestPlace {
  const { plan, routes, busy, load, ends, latest } = book;
  const { days, classes, places, travel, place, placing, dayClass, service, mostBusy, mostLoad } = plan;
  const best: BestPlace = { day: -1, position: -1, cost: Number.POSITIVE_INFINITY };
  const there = place[stop] as number;
  const emptySeen = new Set<number>();
  for (let day = 0; day < days; day += 1) {
    const besides = placing[stop * days + day] as number;
    const route = routes[day] as number[];
    if (besides >= best.cost || besides === Number.POSITIVE_INFINITY) continue;
    if (route.length === 0) {
      const kind = plan.dayKind[day] as number;
      if (emptySeen.has(kind)) continue;
      emptySeen.add(kind);
    }
    const pair = stop * classes + (dayClass[day] as number);
    const work = service[pair] as number;
    const room = (mostBusy[day] as number) - (busy[day] as number) - work;
    if (room < 0 || (load[day] as number) + (plan.load[stop] as number) > (mostLoad[day] as number)) continue;
    const end = plan.end[day] as number;
    const direct = route.length === 0 ? (plan.goingOut[day] as number) : 0;
    let here = plan.start[day] as number;
    let leaves = plan.opens[day] as number;
    for (let position = 0; position <= route.length; position += 1) {
      const next = position < route.length ? (route[position] as number) : -1;
      const to = next < 0 ? end : (place[next] as number);
      const way = travel[here * places + there] as number;
      const begin = beginAt(plan, pair, leaves + way);
      if (begin === Number.POSITIVE_INFINITY) break;
      const onward = travel[there * places + to] as number;
      const bound = next < 0 ? (plan.closes[day] as number) : (latest[next] as number);
      const detour = way + onward - (route.length === 0 ? 0 : (travel[here * places + to] as number));
      const fits = begin + work + onward <= bound && detour <= room;
      const cost = fits
        ? detour + besides + direct + (plan.evenness > 0 ? unevenBy(book, day, work + detour) : 0)
        : Number.POSITIVE_INFINITY;
      if (cost < best.cost && (random === null || random() >= BLINK)) Object.assign(best, { day, position, cost });
      if (next < 0) break;
      here = to;
      leaves = ends[next] as number;
    }
  }
  return best;
}

const unevenBy = (book: RouteBook, day: number, more: number): number =>
  book.unevenness(day, (book.busy[day] as number) + more) - book.unevenness(day, book.busy[day] as number);
