import { DomainError } from '@rillbook/units/domain-error.js';

/** Common practice: what is usual before a property's own months speak. */
const USUAL = { correlation: 0.25, sd: 0.25 } as const;
const MOST = 0.8;

/**
 * Correlation of the errors of one month with the next, drawn towards what is usual where there are few months.
 *
 * ρ̂ = Σ eₜ eₜ₋₁ / Σ e² · (n − 1)/pairs + (1 + 3 ρ̂)/n, then weighted with the usual by its own variance 1/n; kept within 0 … 0.8
 *
 * @param errors - Errors of consecutive months, each over its spread; null where a month has none: those beside it do not follow each other. [–]
 * @returns The correlation. [–]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when an error is not finite.
 * @source Bias of the lag-1 autocorrelation: Kendall (1954), Biometrika 41, 403–404, from memory; the usual value is common practice.
 */
export function correlationOfErrors(errors: readonly (number | null)[]): number {
  const known = errors.filter((error) => error !== null);
  const count = known.length;
  if (!known.every(Number.isFinite)) throw new DomainError('SERIES_OUT_OF_DOMAIN', { errors: count });
  const squares = known.reduce((sum, error) => sum + error * error, 0);
  const pairs = errors.flatMap((error, at) => {
    const before = at === 0 ? null : (errors[at - 1] ?? null);
    return error === null || before === null ? [] : [error * before];
  });
  if (!(squares > 0) || pairs.length === 0) return USUAL.correlation;
  const raw = (pairs.reduce((sum, product) => sum + product, 0) / squares) * ((count - 1) / pairs.length);
  const unbiased = raw + (1 + 3 * raw) / count;
  const ownWeight = USUAL.sd ** 2 / (USUAL.sd ** 2 + 1 / count);
  return Math.min(MOST, Math.max(0, USUAL.correlation + ownWeight * (unbiased - USUAL.correlation)));
}

/**
 * Variance of a weighted sum of errors that follow each other with a correlation.
 *
 * Σᵢ Σⱼ gᵢ gⱼ ρ^|i−j|, by one pass
 *
 * @param weights - Weights of consecutive months. [any]
 * @param correlation - Correlation of a month's error with the next. [–]
 * @returns The variance over that of one error. [any]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when a weight is not finite, or the correlation not within -1 … 1.
 */
export function varianceOfSum(weights: readonly number[], correlation: number): number {
  if (!(weights.every(Number.isFinite) && Math.abs(correlation) <= 1)) {
    throw new DomainError('SERIES_OUT_OF_DOMAIN', { weights: weights.length, correlation });
  }
  let [before, sum] = [0, 0];
  for (const weight of weights) {
    sum += weight * weight + 2 * weight * before;
    before = correlation * (before + weight);
  }
  return sum;
}
