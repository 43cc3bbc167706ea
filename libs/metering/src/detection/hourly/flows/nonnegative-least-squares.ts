import { DomainError } from '@rillbook/units/domain-error.js';
import { valueAt } from '../steps/value-at.js';

/** A gradient counts as zero below this share of the largest right-hand side: rounding of the sums. */
const ROUNDING = 1e-10;

/** Steps of the active set before it is given up: Lawson and Hanson expect about half the number of unknowns, and many are 3 n. */
const MOST_STEPS_PER_UNKNOWN = 10;

/**
 * Least squares with no value below zero, from the normal equations.
 *
 * min ½ xᵀ G x − cᵀ x, x ≥ 0, with G = AᵀA and c = Aᵀb
 *
 * @param gram - G, by rows, n · n; positive definite on what is not zero. [any]
 * @param right - c. [any]
 * @returns x, exact but for rounding. [any]
 * @throws {DomainError} `LEAST_SQUARES_OUT_OF_DOMAIN` when sizes do not fit, a number is not finite or G is not positive definite.
 * @source Lawson and Hanson (1974), Solving Least Squares Problems, chapter 23, algorithm NNLS.
 */
export function nonnegativeLeastSquares(gram: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  if (gram.length !== n * n || ![...gram, ...right].every(Number.isFinite))
    throw new DomainError('LEAST_SQUARES_OUT_OF_DOMAIN', { unknowns: n });
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
    for (let j = 0; j < n; j++) gradient -= valueAt(gram, i * n + j) * valueAt(x, j);
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
    x[i] = now + share * (valueAt(wished, at) - now);
  });
  return passive.every((_, at) => valueAt(wished, at) > 0);
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

/**
 * Solution of the symmetric positive definite equations of some unknowns, by Cholesky.
 *
 * @param gram - All equations, by rows, n · n. [any]
 * @param right - All right-hand sides. [any]
 * @param chosen - Which unknowns are solved for; the others are zero. [–]
 * @returns Their values, in the order of `chosen`. [any]
 * @throws {DomainError} `LEAST_SQUARES_OUT_OF_DOMAIN` when they are not positive definite.
 */
export function solveOn(gram: Float64Array, right: Float64Array, chosen: readonly number[]): Float64Array {
  const m = chosen.length;
  const factor = factorOf(gram, right.length, chosen);
  const z = new Float64Array(m);
  for (let r = 0; r < m; r++) {
    let value = valueAt(right, valueAt(chosen, r));
    for (let k = 0; k < r; k++) value -= valueAt(factor, r * m + k) * valueAt(z, k);
    z[r] = value / valueAt(factor, r * m + r);
  }
  for (let r = m - 1; r >= 0; r--) {
    let value = valueAt(z, r);
    for (let k = r + 1; k < m; k++) value -= valueAt(factor, k * m + r) * valueAt(z, k);
    z[r] = value / valueAt(factor, r * m + r);
  }
  return z;
}

function factorOf(gram: Float64Array, n: number, chosen: readonly number[]): Float64Array {
  const m = chosen.length;
  const factor = new Float64Array(m * m);
  for (let r = 0; r < m; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = valueAt(gram, valueAt(chosen, r) * n + valueAt(chosen, c));
      for (let k = 0; k < c; k++) sum -= valueAt(factor, r * m + k) * valueAt(factor, c * m + k);
      factor[r * m + c] = c < r ? sum / valueAt(factor, c * m + c) : rootOf(sum, n);
    }
  }
  return factor;
}

function rootOf(pivot: number, unknowns: number): number {
  if (!(pivot > 0)) throw new DomainError('LEAST_SQUARES_OUT_OF_DOMAIN', { unknowns });
  return Math.sqrt(pivot);
}
