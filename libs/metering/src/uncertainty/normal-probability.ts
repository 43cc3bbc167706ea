import { DomainError } from '@rillbook/units/domain-error.js';

const P = 0.3275911;
const COEFFICIENTS = [0.254829592, -0.284496736, 1.421413741, -1.453152027, 1.061405429] as const;

/**
 * Probability that a normal quantity with this mean and standard deviation is above zero: the confidence of a gap.
 *
 * P = Φ(mean / sd), with erf by Abramowitz and Stegun 7.1.26, good to 1.5e-7
 *
 * @param mean - Best estimate. [any]
 * @param sd - Its standard deviation, in the same unit; 0 means certain, infinite that nothing is known. [any]
 * @returns Probability from 0 to 1. [–]
 * @throws {DomainError} `PROBABILITY_OUT_OF_DOMAIN` when the mean is not finite, or the deviation is below 0 or not a number.
 * @source Abramowitz and Stegun (1964), Handbook of Mathematical Functions, Eq. 7.1.26.
 */
export function probabilityAboveZero(mean: number, sd: number): number {
  if (!(Number.isFinite(mean) && sd >= 0)) throw new DomainError('PROBABILITY_OUT_OF_DOMAIN', { mean, sd });
  if (sd === 0) return mean > 0 ? 1 : 0;
  const x = Math.abs(mean) / (sd * Math.SQRT2);
  const t = 1 / (1 + P * x);
  const series = COEFFICIENTS.reduceRight((sum, coefficient) => t * (coefficient + sum), 0);
  const upper = 0.5 * series * Math.exp(-x * x);
  return mean >= 0 ? 1 - upper : upper;
}
