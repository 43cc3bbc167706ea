import { DomainError } from '@rillbook/units/domain-error.js';
import type { RandomSource } from '../random-source.js';
import type { SearchBudget } from '../search-budget.js';
import { TourSearch } from './improve-tour.kernel.js';

/** How many near places each place looks at. */
const NEAR = 10;

/** How far apart the cuts of one disturbance may lie. */
const LONGEST_DISTURBANCE = 50;

/** Rounds between two looks at the budget. */
const ROUNDS_AT_A_TIME = 16;

/** A round trip through every place. */
export interface ShortTour {
  /** Each place once, from place 0 on. */
  readonly order: readonly number[];
  readonly length: number;
}

/**
 * A short round trip: iterated local search with 2-opt, Or-opt and a disturbance that exchanges two neighbouring stretches.
 *
 * @param distances - Symmetric distances, row by row; finite, but may be below zero. [any]
 * @param random - Where chance comes from. [–]
 * @param spent - The budget. [–]
 * @returns The best tour found. [any]
 * @throws {DomainError} `DISTANCES_OUT_OF_DOMAIN` when they are not square, not finite or not symmetric.
 * @source Lourenço, Martin and Stützle (2003), Iterated Local Search, Handbook of Metaheuristics; Or, I. (1976); Bentley, J. (1992), Fast
 * algorithms for geometric traveling salesman problems, ORSA Journal on Computing 4(4): neighbour lists and don't-look bits.
 */
export function shortestTour(distances: Float64Array, random: RandomSource, spent: SearchBudget): ShortTour {
  const size = sizeOf(distances);
  if (size < 4)
    return measured(
      Array.from({ length: size }, (_, one) => one),
      distances,
      size,
    );
  const near = nearest(distances, size);
  const search = new TourSearch(distances, nearestNeighbourTour(distances, size), near);
  for (let one = 0; one < size; one += 1) search.wake(one);
  search.improve();
  for (let rounds = 0; spent(rounds) < 1; rounds += ROUNDS_AT_A_TIME) {
    for (let round = 0; round < ROUNDS_AT_A_TIME; round += 1) disturb(search, size, random);
  }
  const { order } = search.tour;
  const from = search.tour.place[0] as number;
  return measured([...order.subarray(from), ...order.subarray(0, from)], distances, size);
}

// Exchanges two neighbouring stretches, improves around the cuts, and takes everything back where that made the tour longer.
function disturb(search: TourSearch, size: number, random: RandomSource): void {
  const most = Math.max(1, Math.floor(Math.min(LONGEST_DISTURBANCE, size - 1) / 3));
  const [skip, first, second] = [size, most, most].map((limit) => Math.floor(random() * limit)) as [number, number, number];
  if (first + second + 3 >= size) return;
  const { tour } = search;
  const at = (steps: number): number => tour.order[(skip + steps) % size] as number;
  search.keep();
  const added = search.moveSegment(at(1), at(1 + first), at(2 + first + second), false);
  if (added - search.improve() > 1e-9) search.takeBack();
}

function sizeOf(distances: Float64Array): number {
  const size = Math.round(Math.sqrt(distances.length));
  if (size * size !== distances.length) throw new DomainError('DISTANCES_OUT_OF_DOMAIN', { values: distances.length });
  for (let from = 0; from < size; from += 1) {
    for (let to = 0; to <= from; to += 1) {
      const way = distances[from * size + to] as number;
      if (!Number.isFinite(way) || way !== distances[to * size + from]) throw new DomainError('DISTANCES_OUT_OF_DOMAIN', { from, to, way });
    }
  }
  return size;
}

function nearest(distances: Float64Array, size: number): readonly Int32Array[] {
  return Array.from({ length: size }, (_, from) => {
    const way = (to: number): number => distances[from * size + to] as number;
    const others = Array.from({ length: size }, (_unused, to) => to).filter((to) => to !== from);
    return Int32Array.from(others.sort((a, b) => way(a) - way(b)).slice(0, NEAR));
  });
}

function nearestNeighbourTour(distances: Float64Array, size: number): readonly number[] {
  const left = new Set(Array.from({ length: size - 1 }, (_, one) => one + 1));
  const order = [0];
  for (let last = 0; left.size > 0; ) {
    const row = last * size;
    let best = -1;
    for (const one of left) if (best < 0 || (distances[row + one] as number) < (distances[row + best] as number)) best = one;
    left.delete(best);
    order.push(best);
    last = best;
  }
  return order;
}

function measured(order: readonly number[], distances: Float64Array, size: number): ShortTour {
  const length = order.reduce((sum, one, at) => sum + (distances[one * size + (order[(at + 1) % size] as number)] as number), 0);
  return { order, length };
}
