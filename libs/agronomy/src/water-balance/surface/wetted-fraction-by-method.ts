import { DomainError } from '@rillbook/units/domain-error.js';

/** How water reaches the ground, as far as the wetted share differs. */
export type WettingMethod = 'rain' | 'sprinkler' | 'drip' | 'subsurface drip';

/**
 * Wetted share by method: FAO-56 Table 20 has 1.0 for rain and sprinklers, 0.3 to 0.4 for trickle (the middle here). Buried lines wet the surface
 * little: 0 in the ideal; a tenth is common practice, no source.
 */
const BY_METHOD: Readonly<Record<WettingMethod, number>> = { rain: 1, sprinkler: 1, drip: 0.35, 'subsurface drip': 0.1 };

/**
 * Common share of the ground that a method wets, fw (FAO-56, Table 20).
 *
 * @param method - How water reaches the ground. [code]
 * @returns Share of the ground that gets wet. [–]
 * @throws {DomainError} `WETTING_METHOD_UNKNOWN` when the word is none of them.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 20, from memory; subsurface drip is common practice, no source.
 */
export function wettedFractionByMethod(method: WettingMethod): number {
  const found = BY_METHOD[method];
  if (found === undefined) throw new DomainError('WETTING_METHOD_UNKNOWN', { method });
  return found;
}
