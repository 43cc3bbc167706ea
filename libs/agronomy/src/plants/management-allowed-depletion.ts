import { DomainError } from '@rillbook/units/domain-error.js';
import type { Plants } from './plant-words.js';

/**
 * Management allowed depletion by kind of plant: turf by FAO-56 Table 22 (p 0.40 and 0.50), 0.50 in general, shallow-rooted annuals 0.35
 * as the middle of 0.30 to 0.40 (common practice, from memory); vegetables as those.
 */
const BY_PLANTS: Readonly<Record<Plants, number>> = {
  'turf cool-season': 0.4,
  'turf warm-season': 0.5,
  trees: 0.5,
  shrubs: 0.5,
  groundcover: 0.5,
  perennials: 0.5,
  annuals: 0.35,
  vegetables: 0.35,
  mixed: 0.5,
};

/**
 * Management allowed depletion, MAD, also p: share of the available water that may be used before the next irrigation.
 *
 * @param plants - What grows there, or null when not known; then as mixed. [code]
 * @returns Share of total available water. [–]
 * @throws {DomainError} `PLANTS_UNKNOWN` when the word is none of them.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 22; common practice for ornamentals.
 */
export function managementAllowedDepletion(plants: Plants | null): number {
  const found = BY_PLANTS[plants ?? 'mixed'];
  if (found === undefined) throw new DomainError('PLANTS_UNKNOWN', { plants });
  return found;
}
