import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * Demands two series that can be compared value by value.
 *
 * @param observed - What was measured. [any]
 * @param predicted - What a model says, in the same order and unit. [any]
 * @returns Errors, predicted less observed, one per pair. [any]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when there is no pair, the series differ in length, or a number is not finite.
 */
export function errorsOf(observed: readonly number[], predicted: readonly number[]): readonly number[] {
  if (!(observed.length > 0 && observed.length === predicted.length && [...observed, ...predicted].every(Number.isFinite))) {
    throw new DomainError('SERIES_OUT_OF_DOMAIN', { observed: observed.length, predicted: predicted.length });
  }
  return observed.map((value, at) => (predicted[at] ?? Number.NaN) - value);
}

/**
 * Mean of a series.
 *
 * @param values - The series, at least one value. [any]
 * @returns The mean, in the same unit. [any]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when there is no value, or one is not finite.
 */
export function meanOf(values: readonly number[]): number {
  if (values.length === 0 || !values.every(Number.isFinite)) throw new DomainError('SERIES_OUT_OF_DOMAIN', { values: values.length });
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
