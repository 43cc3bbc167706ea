import { seededRandom } from '@rillbook/routing/random-source.js';
import { budgetOfRounds } from '@rillbook/routing/search-budget.js';
import { shortestPath } from '@rillbook/routing/tour/shortest-path.js';
import { shortestTour } from '@rillbook/routing/tour/shortest-tour.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';
import { heldKarp, permutations } from './exact-orders.js';

const distancesOf = (size: number, seed: number): Float64Array => {
  const random = seededRandom(seed);
  const points = Array.from({ length: size }, () => [random() * 100, random() * 100] as const);
  return Float64Array.from(points.flatMap(([x, y]) => points.map(([x2, y2]) => Math.round(10 * Math.hypot(x - x2, y - y2)))));
};

describe('a short tour', () => {
  it('is the shortest where all can be tried (Held and Karp 1962)', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const size = 4 + (seed % 9);
      const distances = distancesOf(size, seed);
      const { order, length } = shortestTour(distances, seededRandom(seed), budgetOfRounds(500));
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: size }, (_, one) => one));
      expect(length, `seed ${seed}, ${size} places`).toBe(heldKarp(distances, size));
    }
  });

  it('visits every place once, whatever the distances', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer(), fc.boolean(), (size, seed, same) => {
        const distances = same ? new Float64Array(size * size) : distancesOf(size, seed);
        const { order } = shortestTour(distances, seededRandom(seed), budgetOfRounds(64));
        expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: size }, (_, one) => one));
      }),
      { numRuns: 60 },
    );
  });

  it('is the same for the same seed and budget', () => {
    const distances = distancesOf(50, 7);
    const once = () => shortestTour(distances, seededRandom(3), budgetOfRounds(200));
    expect(once()).toEqual(once());
  });

  it('is not looked for where distances differ by direction or are missing', () => {
    const code = (...values: number[]) => refusalOf(() => shortestTour(Float64Array.from(values), seededRandom(1), budgetOfRounds(1)))[0];
    expect([code(0, 1, 2, 0), code(0, Number.NaN, Number.NaN, 0), code(0, 1, 1)]).toEqual(
      Array.from({ length: 3 }, () => 'DISTANCES_OUT_OF_DOMAIN'),
    );
  });
});

describe('a short way between fixed ends', () => {
  it('is the shortest of all orders', () => {
    for (let seed = 1; seed <= 25; seed += 1) {
      const size = 2 + (seed % 6);
      const distances = distancesOf(size, seed);
      const length = (between: readonly number[]): number => {
        const all = [0, ...between.map((one) => one + 2), 1];
        return all.slice(1).reduce((sum, to, at) => sum + distances[all[at]! * size + to]!, 0);
      };
      const exact = Math.min(...[...permutations(Array.from({ length: size - 2 }, (_, one) => one))].map(length));
      expect(length(shortestPath(distances, seededRandom(seed), budgetOfRounds(300))), `seed ${seed}`).toBe(exact);
    }
  });
});
