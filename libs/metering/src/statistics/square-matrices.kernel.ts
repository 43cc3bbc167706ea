/**
 * Sum of lists of the same length.
 *
 * @param parts - The lists. [any]
 * @returns Their sum, empty where there is none. [any]
 */
export function summed(parts: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(parts[0]?.length ?? 0);
  for (const part of parts) for (let at = 0; at < sum.length; at++) sum[at] = (sum[at] as number) + (part[at] as number);
  return sum;
}

/**
 * Product of a square matrix and a vector.
 *
 * @param matrix - By rows, n · n. [any]
 * @param vector - Of n. [any]
 * @returns The product, of n. [any]
 */
export function timesVector(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  const product = new Float64Array(n);
  for (let row = 0; row < n; row++) {
    let sum = 0;
    for (let column = 0; column < n; column++) {
      const value = matrix[row * n + column] as number;
      // A zone that did not run may have a flow that is not known.
      if (value !== 0) sum += value * (vector[column] as number);
    }
    product[row] = sum;
  }
  return product;
}

/**
 * Adds (sd · v) (sd · v)ᵀ to a square matrix.
 *
 * @param matrix - By rows, n · n; it is changed. [any]
 * @param vector - v, of n. [any]
 * @param sd - Standard deviation along v. [any]
 */
export function addSquare(matrix: Float64Array, vector: Float64Array, sd: number): void {
  const n = vector.length;
  for (let row = 0; row < n; row++) {
    const own = sd * sd * (vector[row] as number);
    if (own === 0) continue;
    for (let column = 0; column < n; column++) {
      const at = row * n + column;
      matrix[at] = (matrix[at] as number) + own * (vector[column] as number);
    }
  }
}

/**
 * Adds G P G to a square matrix, both symmetric; what is zero in G costs nothing.
 *
 * @param matrix - By rows, n · n; it is changed. [any]
 * @param gram - G, by rows. [any]
 * @param middle - P, by rows. [any]
 */
export function addSandwich(matrix: Float64Array, gram: Float64Array, middle: Float64Array): void {
  const n = Math.round(Math.sqrt(gram.length));
  const half = product(middle, gram, n, new Float64Array(n * n));
  product(gram, half, n, matrix);
}

// Adds the product of two matrices to a third.
function product(left: Float64Array, right: Float64Array, n: number, sum: Float64Array): Float64Array {
  for (let row = 0; row < n; row++) {
    for (let k = 0; k < n; k++) {
      const value = left[row * n + k] as number;
      if (value === 0) continue;
      for (let column = 0; column < n; column++) {
        const at = row * n + column;
        sum[at] = (sum[at] as number) + value * (right[k * n + column] as number);
      }
    }
  }
  return sum;
}
