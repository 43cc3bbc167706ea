import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * The lower triangle L of symmetric positive definite equations of some unknowns, L·Lᵀ = G.
 *
 * @param gram - All equations, by rows, n · n. [any]
 * @param unknowns - Their number, n. [–]
 * @param chosen - Which unknowns are taken, m of them; the others are zero. [–]
 * @returns L by rows, m · m, zero above its diagonal. [any]
 * @throws {DomainError} `LEAST_SQUARES_OUT_OF_DOMAIN` when they are not positive definite.
 * @source Golub and Van Loan (2013), Matrix Computations, 4.2.
 */
export function choleskyOf(gram: Float64Array, unknowns: number, chosen: ArrayLike<number>): Float64Array {
  const m = chosen.length;
  const places = Int32Array.from(chosen);
  const factor = new Float64Array(m * m);
  for (let row = 0; row < m; row++) {
    const own = row * m;
    const ofGram = (places[row] as number) * unknowns;
    for (let column = 0; column <= row; column++) {
      const other = column * m;
      let sum = gram[ofGram + (places[column] as number)] as number;
      for (let k = 0; k < column; k++) sum -= (factor[own + k] as number) * (factor[other + k] as number);
      if (column < row) {
        factor[own + column] = sum / (factor[other + column] as number);
        continue;
      }
      if (!(sum > 0)) throw new DomainError('LEAST_SQUARES_OUT_OF_DOMAIN', { unknowns });
      factor[own + row] = Math.sqrt(sum);
    }
  }
  return factor;
}

/**
 * Solution of L·Lᵀ·x = b.
 *
 * @param factor - L by rows, m · m. [any]
 * @param right - b, m long. [any]
 * @returns x. [any]
 */
export function solveByCholesky(factor: Float64Array, right: Float64Array): Float64Array {
  const m = right.length;
  const solved = new Float64Array(m);
  for (let row = 0; row < m; row++) {
    let value = right[row] as number;
    for (let k = 0; k < row; k++) value -= (factor[row * m + k] as number) * (solved[k] as number);
    solved[row] = value / (factor[row * m + row] as number);
  }
  for (let row = m - 1; row >= 0; row--) {
    let value = solved[row] as number;
    for (let k = row + 1; k < m; k++) value -= (factor[k * m + row] as number) * (solved[k] as number);
    solved[row] = value / (factor[row * m + row] as number);
  }
  return solved;
}

/**
 * Solution of the symmetric positive definite equations of some unknowns.
 *
 * @param gram - All equations, by rows, n · n. [any]
 * @param right - All right-hand sides, n. [any]
 * @param chosen - Which unknowns are solved for; the others are zero. [–]
 * @returns Their values, in the order of `chosen`. [any]
 * @throws {DomainError} `LEAST_SQUARES_OUT_OF_DOMAIN` when they are not positive definite.
 */
export function solveOn(gram: Float64Array, right: Float64Array, chosen: ArrayLike<number>): Float64Array {
  const own = Float64Array.from(chosen, (place) => right[place] as number);
  return solveByCholesky(choleskyOf(gram, right.length, chosen), own);
}
