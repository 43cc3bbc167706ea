import { DomainError } from '@rillbook/units/domain-error.js';
import { solveOn } from './cholesky.kernel.js';

/** A gradient counts as zero below this share of the largest right-hand side: rounding of the sums. */
const ROUNDING = 1e-10;

/** Steps of the active set before it is given up: Lawson and Hanson expect about half the number of unknowns, and many are 3 n. */
const MOST_STEPS_PER_UNKNOWN = 10;

/**
 * Least squares with no value below zero, from the normal equations.
 *
 * min ½ xᵀ G x − cᵀ x, x ≥ 0, with G = AᵀA and c = Aᵀb
 *
 * @param gram - G, by rows, n · n; positive definite. [any]
 * @param right - c. [any]
 * @returns x, exact but for rounding. [any]
 * @throws {DomainError} `LEAST_SQUARES_OUT_OF_DOMAIN` when sizes do not fit, a number is not finite or G is not positive definite.
 * @source Lawson and Hanson (1974), Solving Least Squares Problems, chapter 23, algorithm NNLS.
 */
export function nonnegativeLeastSquares(gram: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  if (gram.length !== n * n || !gram.every(Number.isFinite) || !right.every(Number.isFinite))
    throw new DomainError('LEAST_SQUARES_OUT_OF_DOMAIN', { unknowns: n });
  const all = solveOn(gram, right, [...right.keys()]);
  // Where nothing would fall below zero the bounds change nothing.
  if (all.every((value) => value > 0)) return all;
  const x = new Float64Array(n);
  const passive: number[] = [];
  const tolerance = ROUNDING * right.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  for (let step = 0; step < MOST_STEPS_PER_UNKNOWN * n; step++) {
    const entering = steepest(gram, right, x, passive, tolerance);
    if (entering < 0) return x;
    passive.push(entering);
    while (!moveWithin(gram, right, x, passive)) dropZeros(x, passive);
  }
  throw new DomainError('LEAST_SQUARES_OUT_OF_DOMAIN', { unknowns: n });
}

function steepest(gram: Float64Array, right: Float64Array, x: Float64Array, passive: readonly number[], tolerance: number): number {
  const n = right.length;
  let [best, most] = [-1, tolerance];
  for (let i = 0; i < n; i++) {
    if (passive.includes(i)) continue;
    let gradient = right[i] ?? 0;
    for (let j = 0; j < n; j++) gradient -= (gram[i * n + j] as number) * (x[j] as number);
    if (gradient > most) [best, most] = [i, gradient];
  }
  return best;
}

// Moves to the solution on the passive set, or as far towards it as nothing falls below zero. True when it got there.
function moveWithin(gram: Float64Array, right: Float64Array, x: Float64Array, passive: readonly number[]): boolean {
  const wished = solveOn(gram, right, passive);
  let share = 1;
  passive.forEach((i, at) => {
    const [now, then] = [x[i] ?? 0, wished[at] ?? 0];
    if (then <= 0) share = Math.min(share, now / (now - then || 1));
  });
  passive.forEach((i, at) => {
    const now = x[i] ?? 0;
    x[i] = now + share * ((wished[at] as number) - now);
  });
  return passive.every((_, at) => (wished[at] as number) > 0);
}

function dropZeros(x: Float64Array, passive: number[]): void {
  const least = passive.reduce((low, i) => Math.min(low, x[i] ?? 0), Number.POSITIVE_INFINITY);
  const scale = passive.reduce((high, i) => Math.max(high, x[i] ?? 0), 0);
  for (let at = passive.length - 1; at >= 0; at--) {
    const i = passive[at] ?? 0;
    const value = x[i] ?? 0;
    if (value > least && value > scale * Number.EPSILON) continue;
    x[i] = 0;
    passive.splice(at, 1);
  }
}
