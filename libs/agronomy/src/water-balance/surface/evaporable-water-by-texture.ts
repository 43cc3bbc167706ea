import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from '../../soil/soil-texture.js';

/** Readily and total evaporable water of a surface layer. */
export type EvaporableWater = {
  /** Readily evaporable water, REW. [mm] */
  readonly readilyEvaporableWater: Quantity<'mm'>;
  /** Total evaporable water, TEW. [mm] */
  readonly totalEvaporableWater: Quantity<'mm'>;
};

/**
 * REW and TEW by texture for a layer of 100 mm: the middles of the ranges of FAO-56 Table 19 (from memory): sand 2 to 7 and 6 to 12, loamy sand
 * 4 to 8 and 9 to 14, sandy loam 6 to 10 and 15 to 20, loam 8 to 10 and 16 to 22, silt loam 8 to 11 and 18 to 25, silty clay 8 to 12 and 22 to
 * 28, clay 8 to 12 and 22 to 29. Clay loam, which it lacks, as its silty clay loam: 8 to 11 and 22 to 27.
 */
const BY_TEXTURE: Readonly<Record<SoilTexture, readonly [readily: number, total: number]>> = {
  sand: [4.5, 9],
  'loamy sand': [6, 11.5],
  'sandy loam': [8, 17.5],
  loam: [9, 19],
  'silt loam': [9.5, 21.5],
  'clay loam': [9.5, 24.5],
  'silty clay': [10, 25],
  clay: [10, 25.5],
};

/**
 * Evaporable water of a soil's surface layer where nobody measured it, REW and TEW (FAO-56, Table 19).
 *
 * @param texture - Texture of the soil. [code]
 * @returns Middles of the table's ranges. [mm]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 19, from memory.
 * @example evaporableWaterByTexture('loam').readilyEvaporableWater // 9, as in FAO-56 Example 34
 */
export function evaporableWaterByTexture(texture: SoilTexture): EvaporableWater {
  const [readily, total] = BY_TEXTURE[texture];
  return { readilyEvaporableWater: millimetres(readily), totalEvaporableWater: millimetres(total) };
}
