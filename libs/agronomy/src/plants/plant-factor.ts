import { DomainError } from '@rillbook/units/domain-error.js';
import type { Plants, WaterNeed } from './plant-words.js';

/** Share of reference evapotranspiration that plants need to look acceptable, with how sure it is. */
export type PlantFactor = {
  /** Plant factor, also species factor ks. [–] */
  readonly plantFactor: number;
  /** Standard deviation. [–] */
  readonly sd: number;
  /** True when nobody stated it and it comes from a table. [–] */
  readonly assumed: boolean;
};

/** A table's factor and the range that it stands for. */
type Range = { readonly middle: number; readonly low: number; readonly high: number };

/**
 * Plant factor by category of water need: the usual single values of ordinance worksheets within the categories' ranges
 * (23 CCR 491, definition of plant factor; University of California WUCOLS IV, 2014).
 */
const BY_WATER_NEED: Readonly<Record<WaterNeed, Range>> = {
  'very low': { middle: 0.1, low: 0, high: 0.1 },
  low: { middle: 0.2, low: 0.1, high: 0.3 },
  moderate: { middle: 0.5, low: 0.4, high: 0.6 },
  high: { middle: 0.8, low: 0.7, high: 0.9 },
};

/**
 * Plant factor by kind of plant where no water need is stated (ANSI/ASABE S623: turf 0.8 and 0.6, annuals 0.8, woody and herbaceous plants
 * 0.5; vegetables by FAO-56 Table 12, mid-season near 1; turf and vegetable values from memory). Mixed zones follow the woody value.
 */
const BY_PLANTS: Readonly<Record<Plants, Range>> = {
  'turf cool-season': { middle: 0.8, low: 0.7, high: 0.9 },
  'turf warm-season': { middle: 0.6, low: 0.5, high: 0.7 },
  trees: { middle: 0.5, low: 0.3, high: 0.7 },
  shrubs: { middle: 0.5, low: 0.3, high: 0.7 },
  groundcover: { middle: 0.5, low: 0.3, high: 0.7 },
  perennials: { middle: 0.5, low: 0.3, high: 0.7 },
  annuals: { middle: 0.8, low: 0.7, high: 0.9 },
  vegetables: { middle: 1, low: 0.8, high: 1.15 },
  mixed: { middle: 0.5, low: 0.3, high: 0.7 },
};

/** Highest plant factor that is believed: above it a number was likely meant as percent. [–] */
export const HIGHEST_PLANT_FACTOR = 1.5;

/** Standard deviation of a factor that somebody stated. An assumption. */
const STATED_SD = 0.05;

/**
 * Plant factor of a zone: as stated, else by water need, else by kind of plant (ANSI/ASABE S623; WUCOLS IV).
 *
 * Warm-season turf of moderate need keeps its own 0.6, since the turf standard is narrower than the category.
 * The standard deviation of a table's value is that of an even spread over its range: (high - low) / √12.
 *
 * @param stated - The plant factor that somebody stated, or null. [–]
 * @param waterNeed - Category of water need, or null. [code]
 * @param plants - What grows there, or null when not known; then as mixed. [code]
 * @returns The factor, its standard deviation, and whether it was assumed. [–]
 * @throws {DomainError} `PLANT_FACTOR_OUT_OF_DOMAIN` when stated and not within 0 … 1.5.
 * @source ANSI/ASABE S623.1; University of California WUCOLS IV (2014); 23 CCR 491.
 */
export function plantFactor(stated: number | null, waterNeed: WaterNeed | null, plants: Plants | null): PlantFactor {
  if (stated !== null) {
    if (!(stated >= 0 && stated <= HIGHEST_PLANT_FACTOR)) throw new DomainError('PLANT_FACTOR_OUT_OF_DOMAIN', { plantFactor: stated });
    return { plantFactor: stated, sd: STATED_SD, assumed: false };
  }
  const range = rangeOf(waterNeed, plants ?? 'mixed');
  return { plantFactor: range.middle, sd: (range.high - range.low) / Math.sqrt(12), assumed: true };
}

function rangeOf(waterNeed: WaterNeed | null, plants: Plants): Range {
  const ownTurf = plants === 'turf warm-season' && waterNeed === 'moderate';
  return waterNeed === null || ownTurf ? BY_PLANTS[plants] : BY_WATER_NEED[waterNeed];
}
