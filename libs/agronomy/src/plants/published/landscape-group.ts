import { DomainError } from '@rillbook/units/domain-error.js';
import type { Plants } from '../plant-words.js';

/** Groups of landscape plants that the standard gives one factor each. */
export type LandscapeGroup =
  | 'cool-season turf'
  | 'warm-season turf'
  | 'annual flowers'
  | 'woody and herbaceous, dry climate'
  | 'woody and herbaceous, humid climate'
  | 'desert-adapted';

const BY_GROUP: Readonly<Record<LandscapeGroup, number>> = {
  'cool-season turf': 0.8,
  'warm-season turf': 0.6,
  'annual flowers': 0.8,
  'woody and herbaceous, dry climate': 0.5,
  'woody and herbaceous, humid climate': 0.7,
  'desert-adapted': 0.3,
};

/** All groups, in the order of the standard's table. */
export const landscapeGroups = Object.keys(BY_GROUP) as readonly LandscapeGroup[];

/**
 * Plant factor of a group of landscape plants: share of ETo at which they look acceptable.
 *
 * @param group - The group. [code]
 * @returns Plant factor. [–]
 * @throws {DomainError} `LANDSCAPE_GROUP_UNKNOWN` when the word is none of the groups.
 * @source ANSI/ASABE S623.1; woody plants by an abstract of its authors (2014), turf, annuals and desert plants from memory.
 */
export function groupPlantFactor(group: LandscapeGroup): number {
  const found = BY_GROUP[group];
  if (found === undefined) throw new DomainError('LANDSCAPE_GROUP_UNKNOWN', { group });
  return found;
}

/**
 * Group of a kind of plant. Vegetables have none: the standard is about looks, not about crops.
 *
 * @param plants - What grows there. [code]
 * @param climate - Whether woody and herbaceous plants stand in a dry or a humid climate. [code]
 * @returns The group, or null where the standard has none. [code]
 * @source ANSI/ASABE S623.1; a mixed zone is taken as woody and herbaceous.
 */
export function landscapeGroupOf(plants: Plants, climate: 'dry' | 'humid'): LandscapeGroup | null {
  if (plants === 'vegetables') return null;
  if (plants === 'turf cool-season') return 'cool-season turf';
  if (plants === 'turf warm-season') return 'warm-season turf';
  return plants === 'annuals' ? 'annual flowers' : `woody and herbaceous, ${climate} climate`;
}
