import type { PlanInput } from '@rillbook/routing/plan/plan-input.js';

/**
 * The shortest round trip, exactly: dynamic programming over sets of places.
 * Held, M. and Karp, R. M. (1962), A Dynamic Programming Approach to Sequencing Problems, Journal of SIAM 10(1), 196-210.
 */
export function heldKarp(distances: Float64Array, size: number): number {
  const sets = 1 << (size - 1);
  const best = new Float64Array(sets * size).fill(Number.POSITIVE_INFINITY);
  for (let one = 1; one < size; one += 1) best[(1 << (one - 1)) * size + one] = distances[one] as number;
  for (let set = 1; set < sets; set += 1) for (let last = 1; last < size; last += 1) extend(best, { distances, size, set, last });
  let shortest = Number.POSITIVE_INFINITY;
  for (let last = 1; last < size; last += 1) {
    shortest = Math.min(shortest, (best[(sets - 1) * size + last] as number) + (distances[last * size] as number));
  }
  return shortest;
}

interface Chain {
  readonly distances: Float64Array;
  readonly size: number;
  readonly set: number;
  readonly last: number;
}

function extend(best: Float64Array, { distances, size, set, last }: Chain): void {
  const here = best[set * size + last] as number;
  for (let next = 1; next < size; next += 1) {
    const bit = 1 << (next - 1);
    const at = (set | bit) * size + next;
    if (!(set & bit)) best[at] = Math.min(best[at] as number, here + (distances[last * size + next] as number));
  }
}

/** Every order of some things. */
export function* permutations<Thing>(things: readonly Thing[]): Generator<readonly Thing[]> {
  if (things.length < 2) yield things;
  for (const [at, first] of things.entries()) {
    for (const rest of permutations([...things.slice(0, at), ...things.slice(at + 1)])) yield [first, ...rest];
  }
}

/** Every way to give stops to crew days or to none, in every order. Only for a handful of stops. */
export function* everyAssignment({ stops, crewDays }: PlanInput): Generator<{ readonly routes: number[][]; readonly unplaced: number[] }> {
  const bins = crewDays.length + 1;
  for (let code = 0; code < bins ** stops.length; code += 1) {
    const groups: number[][] = Array.from({ length: bins }, () => []);
    for (let stop = 0, rest = code; stop < stops.length; stop += 1, rest = Math.floor(rest / bins)) groups[rest % bins]?.push(stop);
    const unplaced = groups.pop() as number[];
    const orders = groups.map((group) => [...permutations(group)].map((order) => [...order]));
    yield* combined(orders, []).map((routes) => ({ routes, unplaced }));
  }
}

const combined = (orders: readonly number[][][], chosen: number[][]): number[][][] => {
  const [first, ...rest] = orders;
  return first ? first.flatMap((one) => combined(rest, [...chosen, one])) : [chosen];
};
