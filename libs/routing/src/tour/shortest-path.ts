import type { RandomSource } from '../random-source.js';
import type { SearchBudget } from '../search-budget.js';
import { shortestTour } from './shortest-tour.js';

/**
 * A short way from a fixed start through every other place to a fixed end: a round trip in which the step from end to start costs so little
 * that no better tour can do without it.
 *
 * @param distances - Symmetric distances, row by row: the start, the end, then the places between. [any]
 * @param random - Where chance comes from. [–]
 * @param spent - The budget. [–]
 * @returns The places between, in order, counted from 0. [–]
 * @throws {DomainError} As `shortestTour` says.
 */
export function shortestPath(distances: Float64Array, random: RandomSource, spent: SearchBudget): readonly number[] {
  const size = Math.round(Math.sqrt(distances.length));
  const linked = Float64Array.from(distances);
  const longest = linked.reduce((most, way) => Math.max(most, way), 0);
  const link = -(2 * size * longest + 1);
  linked[1] = link;
  linked[size] = link;
  const { order } = shortestTour(linked, random, spent);
  const between = order.filter((one) => one > 1).map((one) => one - 2);
  return order[1] === 1 ? between.reverse() : between;
}
