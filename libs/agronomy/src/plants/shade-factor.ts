import { DomainError } from '@rillbook/units/domain-error.js';
import type { Sun } from './plant-words.js';

/**
 * Shade factor by sun: the low half of the microclimate factor kmc, whose range for shaded places is 0.5 to 0.9 and whose ordinary value
 * is 1.0 (Costello et al. 2000). The middle of the range for shade, and half way to it for part shade, are assumptions.
 */
const BY_SUN: Readonly<Record<Sun, number>> = { full: 1, part: 0.85, shade: 0.7 };

/**
 * Shade factor: how much less plants need where the sun is kept off (Costello et al., microclimate factor).
 *
 * @param sun - How much sun the zone has, or null when not known; then full. [code]
 * @returns The factor. [–]
 * @throws {DomainError} `SUN_UNKNOWN` when the word is none of them.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California.
 */
export function shadeFactor(sun: Sun | null): number {
  const found = BY_SUN[sun ?? 'full'];
  if (found === undefined) throw new DomainError('SUN_UNKNOWN', { sun });
  return found;
}
