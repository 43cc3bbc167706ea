import { DomainError } from '@rillbook/units/domain-error.js';

/**
 * Mean of what the cans of a test caught.
 *
 * @param catches - What each can caught: volumes, depths or rates, all in one unit. [any]
 * @returns The mean, in the same unit. [any]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there is no can, one is below zero or not finite, or all are empty.
 */
export function meanCatch(catches: readonly number[]): number {
  const mean = catches.reduce((sum, each) => sum + each, 0) / catches.length;
  if (!(catches.every((each) => each >= 0) && mean > 0 && Number.isFinite(mean)))
    throw new DomainError('CATCHES_OUT_OF_DOMAIN', { catches });
  return mean;
}

/**
 * Mean of the driest cans of a test.
 *
 * The number of cans is round(share · n), half a can upward, at least one: 4 of 15 and 12 of 46 for the lowest quarter.
 *
 * @param catches - What each can caught: volumes, depths or rates, all in one unit. [any]
 * @param share - Share of the cans, from above 0 to 1. [–]
 * @returns The mean of the lowest, in the same unit. [any]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there is no can, one is below zero or not finite, all are empty, or the share is none.
 * @source The count round(n/4) is that of a university's open library of sprinkler evaluation.
 */
export function lowestMean(catches: readonly number[], share: number): number {
  meanCatch(catches);
  if (!(share > 0 && share <= 1)) throw new DomainError('CATCHES_OUT_OF_DOMAIN', { share });
  const count = Math.max(1, Math.round(share * catches.length));
  const lowest = [...catches].sort((one, other) => one - other).slice(0, count);
  return lowest.reduce((sum, each) => sum + each, 0) / count;
}
