import { DomainError } from '@rillbook/units/domain-error.js';
import { lowestMean, meanCatch } from './catch.js';

const QUARTER = 0.25;
const HALF = 0.5;

/** Regression of the low half on the low quarter, as remembered from a study of audits; the trade's table rounds it to 0.40 and 0.60. */
const REGRESSION_AT_ZERO = 0.386;
const REGRESSION_SLOPE = 0.614;

/**
 * Distribution uniformity of the low quarter.
 *
 * DU_LQ = mean of the lowest quarter / mean of all; the lowest quarter are round(n/4) cans
 *
 * @param catches - What each can caught: volumes, depths or rates, all in one unit. [any]
 * @returns Share of the mean that the driest quarter gets, 0 to 1. [–]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there is no can, one is below zero or not finite, or all are empty.
 * @source Merriam and Keller (1978), Farm Irrigation System Evaluation; count as in a university's open library of sprinkler evaluation.
 * @example lowQuarterUniformity([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]) // 0.4962
 */
export function lowQuarterUniformity(catches: readonly number[]): number {
  return lowestMean(catches, QUARTER) / meanCatch(catches);
}

/**
 * Distribution uniformity of the low half.
 *
 * DU_LH = mean of the lowest half / mean of all; the lowest half are round(n/2) cans
 *
 * @param catches - What each can caught: volumes, depths or rates, all in one unit. [any]
 * @returns Share of the mean that the driest half gets, 0 to 1. [–]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there is no can, one is below zero or not finite, or all are empty.
 * @source A university's open library of sprinkler evaluation.
 * @example lowHalfUniformity([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]) // 0.7158
 */
export function lowHalfUniformity(catches: readonly number[]): number {
  return lowestMean(catches, HALF) / meanCatch(catches);
}

/**
 * Distribution uniformity of the low half, estimated where only that of the low quarter is known.
 *
 * DU_LH = 0.386 + 0.614 · DU_LQ; the run-time multiplier takes the trade's rounded 0.40 + 0.60 · DU_LQ
 *
 * @param distributionUniformity - Distribution uniformity of the low quarter, DU_LQ. [–]
 * @returns The estimate. [–]
 * @throws {DomainError} `UNIFORMITY_OUT_OF_DOMAIN` when not within 0 to 1.
 * @source Irrigation trade's regression, from memory.
 */
export function lowHalfFromLowQuarter(distributionUniformity: number): number {
  if (!(distributionUniformity >= 0 && distributionUniformity <= 1)) {
    throw new DomainError('UNIFORMITY_OUT_OF_DOMAIN', { distributionUniformity });
  }
  return REGRESSION_AT_ZERO + REGRESSION_SLOPE * distributionUniformity;
}

/**
 * Christiansen's uniformity coefficient.
 *
 * CU = 1 − Σ|x − mean| / (n · mean)
 *
 * @param catches - What each can caught: volumes, depths or rates, all in one unit. [any]
 * @returns The coefficient: 1 when all cans hold the same; below 0 when nearly all of the water is in few cans. [–]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there is no can, one is below zero or not finite, or all are empty.
 * @source Christiansen (1942), Irrigation by Sprinkling, University of California Bulletin 670.
 * @example uniformityCoefficient([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]) // 0.6914
 */
export function uniformityCoefficient(catches: readonly number[]): number {
  const mean = meanCatch(catches);
  return 1 - catches.reduce((sum, each) => sum + Math.abs(each - mean), 0) / (catches.length * mean);
}
