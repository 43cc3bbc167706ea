import { DomainError } from '@rillbook/units/domain-error.js';

/** Beyond these degrees of freedom Student's t is the normal distribution for all that matters here. */
const AS_NORMAL = 1e6;

/**
 * The normal score that is as probable as a value of Student's t.
 *
 * z = sign(t) · (8 ν + 1) / (8 ν + 3) · √(ν · ln(1 + t² / ν))
 *
 * @param t - Value. [–]
 * @param freedom - Degrees of freedom ν. [–]
 * @returns Normal score. [–]
 * @throws {DomainError} `PROBABILITY_OUT_OF_DOMAIN` when the value is not finite, or there is no degree of freedom.
 * @source Wallace (1959), good to a hundredth here. From memory.
 */
export function normalScore(t: number, freedom: number): number {
  if (!(Number.isFinite(t) && freedom > 0)) throw new DomainError('PROBABILITY_OUT_OF_DOMAIN', { t, freedom });
  if (freedom > AS_NORMAL) return t;
  return (Math.sign(t) * (8 * freedom + 1) * Math.sqrt(freedom * Math.log1p((t * t) / freedom))) / (8 * freedom + 3);
}
