import type { PackedPlan } from './pack-plan.js';

/**
 * When a stop's work begins that is reached at a time: at once, when the next window opens, or never.
 *
 * @param plan - The plan. [–]
 * @param pair - Stop and class of crew day. [–]
 * @param reached - When the crew is there. [s since the day began]
 * @returns The begin; infinite where no window is open any more. [s since the day began]
 */
export function beginAt(plan: PackedPlan, pair: number, reached: number): number {
  const { from, opens, closes } = plan.windows;
  for (let window = from[pair] as number; window < (from[pair + 1] as number); window += 1) {
    if (reached <= (closes[window] as number)) return Math.max(reached, opens[window] as number);
  }
  return Number.POSITIVE_INFINITY;
}

// The latest begin within a window that is not after a time; −∞ where none is.
function latestBegin(plan: PackedPlan, pair: number, bound: number): number {
  const { from, opens, closes } = plan.windows;
  for (let window = (from[pair + 1] as number) - 1; window >= (from[pair] as number); window -= 1) {
    if (bound >= (opens[window] as number)) return Math.min(bound, closes[window] as number);
  }
  return Number.NEGATIVE_INFINITY;
}

/** The routes as they stand while a search changes them, with what must be known to judge a change in no time. */
export class RouteBook {
  readonly plan: PackedPlan;
  routes: number[][];
  /** By stop: when its work ends, and the latest that it may begin so that every later stop is still in time. */
  readonly ends: Float64Array;
  readonly latest: Float64Array;
  readonly busy: Float64Array;
  readonly load: Float64Array;
  readonly cost: Float64Array;
  /** By stop: its crew day, or −1. */
  readonly dayOf: Int32Array;

  /**
   * Opens the book.
   *
   * @param plan - What is planned. [–]
   * @param routes - Stops by crew day. [–]
   */
  constructor(plan: PackedPlan, routes: readonly (readonly number[])[]) {
    this.plan = plan;
    this.routes = routes.map((route) => [...route]);
    this.ends = new Float64Array(plan.stops);
    this.latest = new Float64Array(plan.stops);
    this.busy = new Float64Array(plan.days);
    this.load = new Float64Array(plan.days);
    this.cost = new Float64Array(plan.days);
    this.dayOf = new Int32Array(plan.stops).fill(-1);
    for (let day = 0; day < plan.days; day += 1) this.reckon(day);
  }

  // Works a crew day out anew after its route has changed.
  reckon(day: number): void {
    const { plan } = this;
    const route = this.routes[day] as number[];
    let here = plan.start[day] as number;
    let now = plan.opens[day] as number;
    let [driven, worked, load, placing] = [0, 0, 0, 0];
    for (const stop of route) {
      const there = plan.place[stop] as number;
      const pair = stop * plan.classes + (plan.dayClass[day] as number);
      const way = plan.travel[here * plan.places + there] as number;
      const begin = beginAt(plan, pair, now + way);
      // Too late for every window happens to locked stops only: they are begun on arrival, and the reader of the plan says so.
      now = (Number.isFinite(begin) ? begin : now + way) + (plan.service[pair] as number);
      this.ends[stop] = now;
      this.dayOf[stop] = day;
      driven += way;
      worked += plan.service[pair] as number;
      load += plan.load[stop] as number;
      placing += plan.placing[stop * plan.days + day] as number;
      here = there;
    }
    if (route.length > 0) driven += plan.travel[here * plan.places + (plan.end[day] as number)] as number;
    this.busy[day] = driven + worked;
    this.load[day] = load;
    this.cost[day] = route.length > 0 ? driven + placing + (plan.goingOut[day] as number) + this.unevenness(day, driven + worked) : 0;
    this.#reckonLatest(day, route);
  }

  // What a day so long costs for the sake of an even spread.
  unevenness(day: number, busy: number): number {
    const most = this.plan.mostBusy[day] as number;
    return this.plan.evenness > 0 && Number.isFinite(most) && most > 0 ? (this.plan.evenness * busy * busy) / most : 0;
  }

  #reckonLatest(day: number, route: readonly number[]): void {
    const { plan } = this;
    let bound = plan.closes[day] as number;
    let next = plan.end[day] as number;
    for (let at = route.length - 1; at >= 0; at -= 1) {
      const stop = route[at] as number;
      const there = plan.place[stop] as number;
      const pair = stop * plan.classes + (plan.dayClass[day] as number);
      const most = bound - (plan.travel[there * plan.places + next] as number) - (plan.service[pair] as number);
      bound = latestBegin(plan, pair, most);
      this.latest[stop] = bound;
      next = there;
    }
  }
}
