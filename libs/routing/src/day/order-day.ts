import type { RandomSource } from '../random-source.js';
import type { SearchBudget } from '../search-budget.js';
import type { CrewDay, PlanInput, PlanStop } from '../plan/plan-input.js';
import { solvePlan } from '../plan/solve-plan.js';
import { shortestPath } from '../tour/shortest-path.js';
import type { TravelTable } from '../travel/travel-table.js';

/** One crew's day: the stops that are on it, and the travel between their places. */
export interface DayInput {
  readonly day: CrewDay;
  readonly stops: readonly PlanStop[];
  readonly travel: TravelTable;
}

/** More than any drive of a day, so that no stop is left out for the sake of driving. In s. */
const NEVER_LEFT_OUT_S = 1e7;

/**
 * The order in which one crew drives the stops of one day so that driving is least and every window holds. All stops stay on the day, too full
 * or not; those that no order can reach in time come last, in the order in which they were given. Locks are not looked at.
 *
 * @param input - The crew day, its stops and the travel between their places. [–]
 * @param random - Where chance comes from. [–]
 * @param spent - The budget. [–]
 * @returns Indices into the stops, in the order of driving. [–]
 * @throws {DomainError} As `packPlan` says.
 */
export function orderDay(input: DayInput, random: RandomSource, spent: SearchBudget): readonly number[] {
  const { travel } = input;
  const day: CrewDay = { ...input.day, mostBusyS: Number.POSITIVE_INFINITY, mostLoad: Number.POSITIVE_INFINITY, skills: [], goingOutS: 0 };
  const stops = input.stops.map((stop) => ({
    ...stop,
    skills: [],
    firstDay: null,
    lastDay: null,
    locked: null,
    leaveOutS: NEVER_LEFT_OUT_S,
  }));
  const known = stops.flatMap(({ place }, stop) => (place === null ? [] : [{ stop, place }]));
  if (stops.every(({ windows }) => windows === null) && isSymmetric(travel)) {
    const way = (from: number | null, to: number | null): number =>
      from === null || to === null ? 0 : (travel.seconds[from * travel.size + to] as number);
    const places = [day.startPlace, day.endPlace, ...known.map(({ place }) => place)];
    const order = shortestPath(Float64Array.from(places.flatMap((from) => places.map((to) => way(from, to)))), random, spent);
    const driven = order.map((at) => (known[at] as { readonly stop: number }).stop);
    return [...driven, ...stops.flatMap(({ place }, stop) => (place === null ? [stop] : []))];
  }
  const one: PlanInput = { travel, stops, crewDays: [{ ...day, closesS: Number.POSITIVE_INFINITY }], evenness: 0 };
  const { routes, unplaced } = solvePlan(one, random, spent);
  return [...(routes[0] ?? []), ...unplaced];
}

function isSymmetric({ seconds, size }: TravelTable): boolean {
  for (let from = 0; from < size; from += 1) {
    for (let to = 0; to < from; to += 1) if (seconds[from * size + to] !== seconds[to * size + from]) return false;
  }
  return true;
}
