import { DomainError } from '@rillbook/units/domain-error.js';
import type { Plants, WaterNeed } from './plant-words.js';

/** Share of reference evapotranspiration that plants need to look acceptable. */
export type PlantFactor = {
  /** Plant factor, also species factor ks. [–] */
  readonly plantFactor: number;
  /** True when nobody stated it and it comes from a table. [–] */
  readonly assumed: boolean;
};

/**
 * Plant factor by category of water need: the usual single values of ordinance worksheets within the categories' ranges
 * (23 CCR 491, definition of plant factor; University of California WUCOLS IV, 2014).
 */
const BY_WATER_NEED: Readonly<Record<WaterNeed, number>> = { 'very low': 0.1, low: 0.2, moderate: 0.5, high: 0.8 };

/**
 * Plant factor by kind of plant where no water need is stated (ANSI/ASABE S623: turf 0.8 and 0.6, annuals 0.8, woody and herbaceous plants
 * 0.5; vegetables by FAO-56 Table 12, mid-season near 1; turf and vegetable values from memory). Mixed zones follow the woody value.
 */
const BY_PLANTS: Readonly<Record<Plants, number>> = {
  'turf cool-season': 0.8,
  'turf warm-season': 0.6,
  trees: 0.5,
  shrubs: 0.5,
  groundcover: 0.5,
  perennials: 0.5,
  annuals: 0.8,
  vegetables: 1,
  mixed: 0.5,
};

/** Highest plant factor that is believed: above it a number was likely meant as percent. [–] */
export const HIGHEST_PLANT_FACTOR = 1.5;

/**
 * Plant factor of a zone: as stated, else by water need, else by kind of plant (ANSI/ASABE S623; WUCOLS IV).
 *
 * Warm-season turf of moderate need keeps its own 0.6, since the turf standard is narrower than the category.
 *
 * @param stated - The plant factor that somebody stated, or null. [–]
 * @param waterNeed - Category of water need, or null. [code]
 * @param plants - What grows there, or null when not known; then as mixed. [code]
 * @returns The factor, and whether it was assumed. [–]
 * @throws {DomainError} `PLANT_FACTOR_OUT_OF_DOMAIN` when stated and not within 0 … 1.5.
 * @source ANSI/ASABE S623.1; University of California WUCOLS IV (2014); 23 CCR 491.
 */
export function plantFactor(stated: number | null, waterNeed: WaterNeed | null, plants: Plants | null): PlantFactor {
  if (stated !== null) {
    if (!(stated >= 0 && stated <= HIGHEST_PLANT_FACTOR)) throw new DomainError('PLANT_FACTOR_OUT_OF_DOMAIN', { plantFactor: stated });
    return { plantFactor: stated, assumed: false };
  }
  const kind = plants ?? 'mixed';
  const ownTurf = kind === 'turf warm-season' && waterNeed === 'moderate';
  return { plantFactor: waterNeed === null || ownTurf ? BY_PLANTS[kind] : BY_WATER_NEED[waterNeed], assumed: true };
}
