import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from './soil-texture.js';

/** Class of slope as the scheduling table has them, in percent. */
export type SlopeClass = '0-3' | '4-6' | '7-12' | '13+';

/** Highest slope of each class but the last; a slope between two classes belongs to the steeper, which is the safe side. [%] */
const UPPER_ENDS: readonly (readonly [number, SlopeClass])[] = [
  [3, '0-3'],
  [6, '4-6'],
  [12, '7-12'],
];

/** Allowable surface accumulation in inches, as the table prints it; silt loam, which it lacks, lies between loam and clay loam. */
const INCHES_BY_TEXTURE: Readonly<Record<SoilTexture, Readonly<Record<SlopeClass, number>>>> = {
  sand: { '0-3': 0.4, '4-6': 0.35, '7-12': 0.3, '13+': 0.25 },
  'loamy sand': { '0-3': 0.36, '4-6': 0.3, '7-12': 0.26, '13+': 0.22 },
  'sandy loam': { '0-3': 0.33, '4-6': 0.29, '7-12': 0.24, '13+': 0.2 },
  loam: { '0-3': 0.3, '4-6': 0.25, '7-12': 0.21, '13+': 0.17 },
  'silt loam': { '0-3': 0.29, '4-6': 0.24, '7-12': 0.2, '13+': 0.16 },
  'clay loam': { '0-3': 0.26, '4-6': 0.22, '7-12': 0.18, '13+': 0.15 },
  'silty clay': { '0-3': 0.23, '4-6': 0.19, '7-12': 0.16, '13+': 0.13 },
  clay: { '0-3': 0.2, '4-6': 0.15, '7-12': 0.1, '13+': 0.1 },
};

/**
 * Class of a slope.
 *
 * @param slope - Rise over run. [%]
 * @returns The class of the scheduling table. [code]
 * @throws {DomainError} `SLOPE_OUT_OF_DOMAIN` when negative or not finite.
 * @source Irrigation trade scheduling table (2005), slope columns from memory.
 */
export function slopeClass(slope: number): SlopeClass {
  if (!(slope >= 0 && Number.isFinite(slope))) throw new DomainError('SLOPE_OUT_OF_DOMAIN', { slope });
  return UPPER_ENDS.find(([end]) => slope <= end)?.[1] ?? '13+';
}

/**
 * Allowable surface accumulation, ASA: water that may stand on the ground before it runs off.
 *
 * @param texture - Texture of the soil. [code]
 * @param slope - Rise over run. [%]
 * @returns Depth of water. [mm]
 * @throws {DomainError} `SLOPE_OUT_OF_DOMAIN` when negative or not finite.
 * @source Irrigation trade scheduling table (2005); flat column as published, slope columns from memory.
 * @example allowableSurfaceAccumulation('clay', 2) // 5.08, 0.20 in
 */
export function allowableSurfaceAccumulation(texture: SoilTexture, slope: number): Quantity<'mm'> {
  return millimetresFromInches(INCHES_BY_TEXTURE[texture][slopeClass(slope)]);
}
