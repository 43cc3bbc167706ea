import type { ChangeScore } from './change-scores.js';

/** Flow cannot fall below nothing, beyond what it is known to: this, or two standard deviations. Common practice, no source. */
const DOUBT = 0.1;
/** A change smaller than this is rarely a fault; one larger than that rarely one zone's. Common practice, no source. */
const SMALL = 0.2;
const LARGE = 3;
/** How likely such changes are, as logarithms of odds: a valve that does not open is common. Assumptions. */
const LOG_ODDS = { small: -3, large: -2, nothing: 1.5, other: 0 } as const;

/**
 * Whether a change is one that a zone can have: no zone passes less than nothing.
 *
 * @param score - The change and its standard deviation. [–]
 * @returns False where only a fault of the model can say so. [–]
 */
export function isPossible(score: ChangeScore): boolean {
  const { change, sd } = score;
  return change >= -1 - Math.max(DOUBT, 2 * sd);
}

/**
 * How likely a change of a zone's flow is before usage is asked, as logarithm of odds: usage by the hour often cannot tell zones of one hour apart,
 * yet of one it asks that it pass less than nothing, and of another that it stand still.
 *
 * @param score - The change and its standard deviation. [–]
 * @returns Logarithm of odds; −∞ for what cannot be. [–]
 */
export function logOddsOf(score: ChangeScore): number {
  if (!isPossible(score)) return Number.NEGATIVE_INFINITY;
  const { change, sd } = score;
  if (Math.abs(change + 1) <= Math.min(SMALL, Math.max(DOUBT / 2, sd))) return LOG_ODDS.nothing;
  if (Math.abs(change) < SMALL) return LOG_ODDS.small;
  return change > LARGE ? LOG_ODDS.large : LOG_ODDS.other;
}
