import { DomainError } from '@rillbook/units/domain-error.js';

/** Limits of a control chart. */
export interface ControlLimits {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Exponentially weighted moving average.
 *
 * z(i) = λ · x(i) + (1 − λ) · z(i−1), z(0) = target
 *
 * @param values - The series, in order of time. [any]
 * @param target - Value that the process should have; the average starts there. [any]
 * @param weight - Weight λ of the newest value, above 0 to 1. [–]
 * @returns The average after each value, in the same order and unit. [any]
 * @throws {DomainError} `EWMA_OUT_OF_DOMAIN` when the weight is outside its range or a number is not finite.
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.
 */
export function ewma(values: readonly number[], target: number, weight: number): readonly number[] {
  if (!(weight > 0 && weight <= 1 && [target, ...values].every(Number.isFinite)))
    throw new DomainError('EWMA_OUT_OF_DOMAIN', { target, weight });
  let average = target;
  return values.map((value) => {
    average = weight * value + (1 - weight) * average;
    return average;
  });
}

/**
 * Control limits of an exponentially weighted moving average.
 *
 * target ± k · s · √(λ / (2 − λ))
 *
 * @param target - Value that the process should have. [any]
 * @param sd - Standard deviation of single values, in the same unit. [any]
 * @param weight - Weight λ of the newest value, above 0 to 1. [–]
 * @param width - Width k in standard deviations of the average, usually 3. [–]
 * @returns Lower and upper limit of a long series, in the same unit. [any]
 * @throws {DomainError} `EWMA_OUT_OF_DOMAIN` when the weight is outside its range, or deviation or width are below zero or not finite.
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.
 * @example ewmaLimits(50, 2.0539, 0.3, 3) // 47.4115 and 52.5884
 */
export function ewmaLimits(target: number, sd: number, weight: number, width: number): ControlLimits {
  const half = width * sd * Math.sqrt(weight / (2 - weight));
  if (!(weight > 0 && weight <= 1 && sd >= 0 && width >= 0 && Number.isFinite(target + half))) {
    throw new DomainError('EWMA_OUT_OF_DOMAIN', { target, sd, weight, width });
  }
  return { lower: target - half, upper: target + half };
}

/**
 * Places of a series that lie outside control limits.
 *
 * @param series - The series, such as that of `ewma`. [any]
 * @param limits - Lower and upper limit, in the same unit. [any]
 * @returns Index of each value outside, counted from 0. [–]
 */
export function outOfControl(series: readonly number[], limits: ControlLimits): readonly number[] {
  return series.flatMap((value, at) => (value < limits.lower || value > limits.upper ? [at] : []));
}
