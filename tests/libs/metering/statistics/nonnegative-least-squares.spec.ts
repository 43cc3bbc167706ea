import { nonnegativeLeastSquares } from '@rillbook/metering/statistics/nonnegative-least-squares.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const UNKNOWNS = 4;
const number = fc.integer({ min: -9, max: 9 });
const problem = fc.record({
  rows: fc.array(fc.array(number, { minLength: UNKNOWNS, maxLength: UNKNOWNS }), { minLength: 6, maxLength: 9 }),
  right: fc.array(number, { minLength: 9, maxLength: 9 }),
});

function normalEquations(rows: readonly (readonly number[])[], right: readonly number[]) {
  const gram = new Float64Array(UNKNOWNS ** 2);
  const c = new Float64Array(UNKNOWNS);
  rows.forEach((row, at) => {
    for (let i = 0; i < UNKNOWNS; i++) {
      c[i] = (c[i] as number) + (row[i] as number) * (right[at] as number);
      for (let j = 0; j < UNKNOWNS; j++)
        gram[i * UNKNOWNS + j] = (gram[i * UNKNOWNS + j] as number) + (row[i] as number) * (row[j] as number);
    }
  });
  // A ridge of one: definite whatever the rows are.
  for (let i = 0; i < UNKNOWNS; i++) gram[i * (UNKNOWNS + 1)] = (gram[i * (UNKNOWNS + 1)] as number) + 1;
  return { gram, c };
}

function gradient(gram: Float64Array, c: Float64Array, x: Float64Array, i: number): number {
  let sum = c[i] as number;
  for (let j = 0; j < UNKNOWNS; j++) sum -= (gram[i * UNKNOWNS + j] as number) * (x[j] as number);
  return sum;
}

describe('least squares with no value below zero', () => {
  it('meets the conditions of Karush, Kuhn and Tucker: the problem is convex, so that nothing is better', () => {
    fc.assert(
      fc.property(problem, ({ rows, right }) => {
        const { gram, c } = normalEquations(rows, right);
        const x = nonnegativeLeastSquares(gram, c);
        const scale = Math.max(1, ...c.map(Math.abs));
        for (let i = 0; i < UNKNOWNS; i++) {
          const slope = gradient(gram, c, x, i) / scale;
          expect(x[i]).toBeGreaterThanOrEqual(0);
          if ((x[i] as number) > 0) expect(Math.abs(slope)).toBeLessThan(1e-8);
          else expect(slope).toBeLessThan(1e-8);
        }
      }),
      { seed: 20260101, numRuns: 500 },
    );
  });

  it('solves a problem done by hand: the second unknown would be −1, so that it is 0 and the first is 3/2', () => {
    // x + y = 1, x = 2: without a limit x = 2, y = −1; with y = 0 the mean of 1 and 2.
    const x = nonnegativeLeastSquares(new Float64Array([2, 1, 1, 1]), new Float64Array([3, 1]));
    expect(x[0]).toBeCloseTo(1.5, 12);
    expect(x[1]).toBe(0);
  });

  it('refuses sizes that do not fit, and equations that are not definite', () => {
    expect(() => nonnegativeLeastSquares(new Float64Array(3), new Float64Array(2))).toThrow('LEAST_SQUARES_OUT_OF_DOMAIN');
    expect(() => nonnegativeLeastSquares(new Float64Array([-1]), new Float64Array([1]))).toThrow('LEAST_SQUARES_OUT_OF_DOMAIN');
  });
});
