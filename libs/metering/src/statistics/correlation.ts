import { DomainError } from '@rillbook/units/domain-error.js';
import { errorsOf, meanOf } from './paired-series.js';

/**
 * Correlation of two series (Pearson).
 *
 * r = Σ(x − x̄)(y − ȳ) / √(Σ(x − x̄)² · Σ(y − ȳ)²)
 *
 * @param one - The first series. [any]
 * @param other - The second, in the same order. [any]
 * @returns The correlation, −1 to 1; null where a series does not vary. [–]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when there is no pair, the series differ in length, or a number is not finite.
 * @source Textbook definition.
 */
export function correlation(one: readonly number[], other: readonly number[]): number | null {
  errorsOf(one, other);
  const [oneMean, otherMean] = [meanOf(one), meanOf(other)];
  const products = one.map((value, at) => (value - oneMean) * ((other[at] ?? Number.NaN) - otherMean));
  const spread = Math.sqrt(
    one.reduce((sum, value) => sum + (value - oneMean) ** 2, 0) * other.reduce((sum, value) => sum + (value - otherMean) ** 2, 0),
  );
  return spread === 0 ? null : products.reduce((sum, product) => sum + product, 0) / spread;
}

/**
 * Share of the variance that a model explains, R², for its number of parameters where one is given.
 *
 * R² = r²; adjusted 1 − (1 − R²)(n − 1) / (n − p − 1)
 *
 * @param observed - What was measured. [any]
 * @param predicted - What the model says, in the same order and unit. [any]
 * @param parameters - Number p of the model's parameters; 0 leaves R² as it is. [–]
 * @returns The share; null where a series does not vary. [–]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when the series cannot be compared; `PARAMETERS_OUT_OF_DOMAIN` when p is not a whole number
 * from 0 to below n − 1.
 * @source An open library of energy metering.
 */
export function determination(observed: readonly number[], predicted: readonly number[], parameters = 0): number | null {
  const r = correlation(observed, predicted);
  const freedom = observed.length - parameters - 1;
  if (!(Number.isInteger(parameters) && parameters >= 0 && freedom > 0)) {
    throw new DomainError('PARAMETERS_OUT_OF_DOMAIN', { parameters, count: observed.length });
  }
  return r === null ? null : 1 - ((1 - r * r) * (observed.length - 1)) / freedom;
}

/**
 * Correlation of each error with the one before it: far from zero, the model misses something that lasts.
 *
 * @param observed - What was measured, in order of time, at least three values. [any]
 * @param predicted - What the model says, in the same order and unit. [any]
 * @returns Autocorrelation at lag one; null where the errors do not vary. [–]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when the series cannot be compared or have fewer than three values.
 * @source An open library of energy metering.
 */
export function errorAutocorrelation(observed: readonly number[], predicted: readonly number[]): number | null {
  const errors = errorsOf(observed, predicted);
  if (errors.length < 3) throw new DomainError('SERIES_OUT_OF_DOMAIN', { observed: observed.length, predicted: predicted.length });
  return correlation(errors.slice(0, -1), errors.slice(1));
}
