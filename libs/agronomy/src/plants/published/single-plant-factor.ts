import { DomainError } from '@rillbook/units/domain-error.js';
import type { FactorRange } from './factor-range.js';

/** A plant that stands alone: the guide sets its factors by size, not by the cover of a planting. */
export type SinglePlant = 'shrub' | 'very large shrub' | 'tree under 15 ft' | 'larger tree';

const DENSITY: Readonly<Record<SinglePlant, FactorRange>> = {
  shrub: { low: 1, high: 1 },
  'very large shrub': { low: 1.1, high: 1.1 },
  'tree under 15 ft': { low: 1, high: 1 },
  'larger tree': { low: 1.1, high: 1.2 },
};

/** Microclimate factor of a large tree that stands alone in the wind. */
const LARGE_ISOLATED_TREE: FactorRange = { low: 1.2, high: 1.3 };

/**
 * Density factor, kd, of a plant that stands alone.
 *
 * @param plant - The plant by size. [code]
 * @returns Lowest and highest factor. [–]
 * @throws {DomainError} `SINGLE_PLANT_UNKNOWN` when the word is none of the list.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California, page 51.
 */
export function singlePlantDensity(plant: SinglePlant): FactorRange {
  const found = DENSITY[plant];
  if (!found) throw new DomainError('SINGLE_PLANT_UNKNOWN', { plant });
  return found;
}

/**
 * Microclimate factor, kmc, of a large tree that stands alone: wind reaches it from every side.
 *
 * @returns Lowest and highest factor. [–]
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California, page 51.
 */
export function isolatedTreeMicroclimate(): FactorRange {
  return LARGE_ISOLATED_TREE;
}
