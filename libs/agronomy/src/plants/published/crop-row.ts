import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** A coefficient at the start, in the middle and at the end of the season. */
export type SeasonCoefficient = { readonly initial: number; readonly mid: number; readonly end: number };

/** What FAO-56 tabulates of a crop that landscapes have too. */
export type CropRow = {
  /** Single crop coefficient, Kc. [–] */
  readonly single: SeasonCoefficient;
  /** Basal crop coefficient, Kcb; null where the row was not read. [–] */
  readonly basal: SeasonCoefficient | null;
  /** Greatest height, h; null where the row was not read. [mm] */
  readonly height: Quantity<'mm'> | null;
  /** Range of root depth, Zr; null where the row was not read. [mm] */
  readonly rootDepth: { readonly low: Quantity<'mm'>; readonly high: Quantity<'mm'> } | null;
  /** Depletion fraction for 5 mm/d, p. [–] */
  readonly depletionFraction: number;
};

/** Crops of the tables that stand in landscapes. */
export type LandscapeCrop = 'turf cool-season' | 'turf warm-season' | 'citrus, no ground cover, 70% canopy';

const season = (initial: number, mid: number, end: number): SeasonCoefficient => ({ initial, mid, end });
const depths = (low: number, high: number) => ({ low: low as Quantity<'mm'>, high: high as Quantity<'mm'> });

const ROWS: Readonly<Record<LandscapeCrop, CropRow>> = {
  'turf cool-season': {
    single: season(0.9, 0.95, 0.95),
    basal: season(0.85, 0.9, 0.9),
    height: 100 as Quantity<'mm'>,
    rootDepth: depths(500, 1000),
    depletionFraction: 0.4,
  },
  'turf warm-season': {
    single: season(0.8, 0.85, 0.85),
    basal: season(0.75, 0.8, 0.8),
    height: null,
    rootDepth: null,
    depletionFraction: 0.5,
  },
  'citrus, no ground cover, 70% canopy': {
    single: season(0.7, 0.65, 0.7),
    basal: null,
    height: null,
    rootDepth: depths(1200, 1500),
    depletionFraction: 0.5,
  },
};

/**
 * Row of FAO-56's crop tables for a crop that landscapes have too: coefficients of a crop that yields all it can, higher than the plant
 * factor at which a landscape looks acceptable.
 *
 * @param crop - The crop. [code]
 * @returns Its coefficients, height, roots and depletion fraction. [–] and [mm]
 * @throws {DomainError} `CROP_UNKNOWN` when the word is none of the crops.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Tables 12, 17 and 22, read in a scientific library's table.
 */
export function cropRow(crop: LandscapeCrop): CropRow {
  const found = ROWS[crop];
  if (!found) throw new DomainError('CROP_UNKNOWN', { crop });
  return found;
}
