import { DomainError } from '@rillbook/units/domain-error.js';

/** How a cumulative sum is judged. */
export interface CusumDesign {
  /** Value that the process should have. */
  readonly target: number;
  /** Slack k: what each value may be off without being summed. */
  readonly slack: number;
  /** Decision h: a sum above it is a signal. */
  readonly decision: number;
}

/** Both cumulative sums, and the first signal. */
export interface Cusum {
  readonly high: readonly number[];
  readonly low: readonly number[];
  /** Index of the first value at which a sum passes the decision, counted from 0; null where none does. */
  readonly firstSignal: number | null;
}

/**
 * Tabular cumulative sum.
 *
 * S_hi(i) = max(0, S_hi(i−1) + x(i) − m − k); S_lo(i) = max(0, S_lo(i−1) + m − k − x(i)); both start at 0
 *
 * @param values - The series, in order of time. [any]
 * @param design - Target m, slack k and decision h, in the same unit. [any]
 * @returns Both sums after each value and the first signal. [any]
 * @throws {DomainError} `CUSUM_OUT_OF_DOMAIN` when slack or decision are below zero or a number is not finite.
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3.
 */
export function tabularCusum(values: readonly number[], design: CusumDesign): Cusum {
  const { target, slack, decision } = design;
  if (!(slack >= 0 && decision >= 0 && [target, slack, decision, ...values].every(Number.isFinite))) {
    throw new DomainError('CUSUM_OUT_OF_DOMAIN', { target, slack, decision });
  }
  const high = accumulate(values.map((value) => value - target - slack));
  const low = accumulate(values.map((value) => target - slack - value));
  const first = values.findIndex((_, at) => Math.max(high[at] ?? 0, low[at] ?? 0) > decision);
  return { high, low, firstSignal: first < 0 ? null : first };
}

function accumulate(steps: readonly number[]): readonly number[] {
  let sum = 0;
  return steps.map((step) => {
    sum = Math.max(0, sum + step);
    return sum;
  });
}
