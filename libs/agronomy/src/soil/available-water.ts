import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from './soil-texture.js';

/**
 * Available water by texture, in depth of water per depth of soil, from memory. All but sand lie within the ranges of their groups in the UC
 * Drought Management table; sand, 0.72 in/ft, lies below its group of coarse and fine sands (0.75 to 1.25) and within that of very coarse sands.
 */
const BY_TEXTURE: Readonly<Record<SoilTexture, number>> = {
  sand: 0.06,
  'loamy sand': 0.08,
  'sandy loam': 0.12,
  loam: 0.17,
  'silt loam': 0.18,
  'clay loam': 0.18,
  'silty clay': 0.17,
  clay: 0.17,
};

/** Millimetres in a metre. */
const MILLIMETRES_PER_METRE = 1000;

/**
 * Available water-holding capacity of a soil, AW: between field capacity and wilting point.
 *
 * @param texture - Texture of the soil. [code]
 * @returns Depth of water that a metre of this soil holds for plants. [mm/m]
 * @source Irrigation trade scheduling tables (2005), values from memory; checked against UC Drought Management, soil characteristics.
 */
export function availableWater(texture: SoilTexture): Quantity<'mm/m'> {
  return finiteQuantity(BY_TEXTURE[texture] * MILLIMETRES_PER_METRE, 'AVAILABLE_WATER_OUT_OF_DOMAIN');
}
