import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { Plants } from '../plant-words.js';

/** Depth of soil that plants come with, in inches: sod and seed bed 2, small pots 4 to 6, a five-gallon shrub 10, a fifteen-gallon tree 14. */
const ROOT_BALL_INCHES: Readonly<Record<Plants, number>> = {
  'turf cool-season': 2,
  'turf warm-season': 2,
  trees: 14,
  shrubs: 10,
  groundcover: 4,
  perennials: 6,
  annuals: 4,
  vegetables: 4,
  mixed: 6,
};

/** Plant factor of turf whose bed is kept moist until it has rooted: all of ETo. */
const YOUNG_TURF_FACTOR = 1;

/** Plant factor of other plants until they have rooted: the usual value of high water need. */
const YOUNG_PLANT_FACTOR = 0.8;

/** Density factor on the day of planting: the middle of the guide's class for sparse and young plantings, 0.5 to 0.9. */
const YOUNG_DENSITY = 0.7;

const isTurf = (plants: Plants | null): boolean => plants === 'turf cool-season' || plants === 'turf warm-season';

/**
 * Root depth of young plants: from the soil they came with to the depth of grown ones, evenly over the establishment.
 *
 * Zr = Z0 + share · (Zr(grown) − Z0), Z0 never deeper than the grown roots
 *
 * @param plants - What was planted, or null when not known; then as mixed. [code]
 * @param rootDepth - Depth of the grown plants' roots. [mm]
 * @param share - Share of the establishment that has passed. [–]
 * @returns Depth of the root zone. [mm]
 * @throws {DomainError} `ESTABLISHMENT_OUT_OF_DOMAIN` when the share is not within 0 … 1.
 * @source Common practice, no source: the usual heights of sod, pots and nursery containers.
 */
export function youngRootDepth(plants: Plants | null, rootDepth: Quantity<'mm'>, share: number): Quantity<'mm'> {
  const rootBall = Math.min(rootDepth, millimetresFromInches(ROOT_BALL_INCHES[plants ?? 'mixed']));
  return millimetres(between(rootBall, rootDepth, share));
}

/**
 * Plant factor of young plants: until they have rooted they are watered as plants of high need, turf as a moist bed; never below the factor
 * of grown ones.
 *
 * @param plants - What was planted, or null when not known; then as mixed. [code]
 * @param plantFactor - Plant factor of grown plants. [–]
 * @param share - Share of the establishment that has passed. [–]
 * @returns Plant factor. [–]
 * @throws {DomainError} `ESTABLISHMENT_OUT_OF_DOMAIN` when the share is not within 0 … 1.
 * @source Common practice, no source, for the factors; Costello et al. (2000): new plantings need water more often, from memory.
 */
export function youngPlantFactor(plants: Plants | null, plantFactor: number, share: number): number {
  return between(Math.max(plantFactor, isTurf(plants) ? YOUNG_TURF_FACTOR : YOUNG_PLANT_FACTOR), plantFactor, share);
}

/**
 * Density factor of young plants: sparse on the day of planting, as grown when established; turf is a full cover from the start.
 *
 * @param plants - What was planted, or null when not known; then as mixed. [code]
 * @param densityFactor - Density factor of the grown planting. [–]
 * @param share - Share of the establishment that has passed. [–]
 * @returns Density factor. [–]
 * @throws {DomainError} `ESTABLISHMENT_OUT_OF_DOMAIN` when the share is not within 0 … 1.
 * @source Costello et al. (2000): young and sparse plantings have a low density factor, 0.5 to 0.9, from memory; the middle and the even growth are assumptions.
 */
export function youngDensityFactor(plants: Plants | null, densityFactor: number, share: number): number {
  return between(isTurf(plants) ? densityFactor : Math.min(densityFactor, YOUNG_DENSITY), densityFactor, share);
}

function between(atPlanting: number, grown: number, share: number): number {
  if (!(share >= 0 && share <= 1)) throw new DomainError('ESTABLISHMENT_OUT_OF_DOMAIN', { share });
  return atPlanting + share * (grown - atPlanting);
}
