import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from './soil-texture.js';

/** Group of textures for which a range of available water is published. */
export type TextureGroup =
  | 'very coarse sands'
  | 'coarse sands, fine sands, loamy sands'
  | 'sandy loams, fine sandy loams'
  | 'very fine sandy loams, loams, silt loams'
  | 'clay loams, silty clay loams, sandy clay loams'
  | 'sandy clays, silty clays, clays'
  | 'sandy clay loam, loam, silt loam by feel';

/** Range of the available water-holding capacity. */
export type AvailableWaterRange = {
  /** Lowest. [mm/m] */
  readonly from: Quantity<'mm/m'>;
  /** Highest. [mm/m] */
  readonly to: Quantity<'mm/m'>;
};

/** In inches of water per foot of soil, as the tables print them. */
const INCHES_PER_FOOT: Readonly<Record<TextureGroup, readonly [number, number]>> = {
  'very coarse sands': [0.4, 0.75],
  'coarse sands, fine sands, loamy sands': [0.75, 1.25],
  'sandy loams, fine sandy loams': [1.25, 1.75],
  'very fine sandy loams, loams, silt loams': [1.5, 2.3],
  'clay loams, silty clay loams, sandy clay loams': [1.75, 2.5],
  'sandy clays, silty clays, clays': [1.6, 2.5],
  'sandy clay loam, loam, silt loam by feel': [1.5, 2.1],
};

/** Group of each texture; sand is split by the table into very coarse and other sands, and is taken as the latter. */
const GROUP_OF: Readonly<Record<SoilTexture, TextureGroup>> = {
  sand: 'coarse sands, fine sands, loamy sands',
  'loamy sand': 'coarse sands, fine sands, loamy sands',
  'sandy loam': 'sandy loams, fine sandy loams',
  loam: 'very fine sandy loams, loams, silt loams',
  'silt loam': 'very fine sandy loams, loams, silt loams',
  'clay loam': 'clay loams, silty clay loams, sandy clay loams',
  'silty clay': 'sandy clays, silty clays, clays',
  clay: 'sandy clays, silty clays, clays',
};

const MILLIMETRES_PER_METRE = 1000;
const INCHES_IN_A_FOOT = 12;

/**
 * Published range of the available water-holding capacity of a group of textures.
 *
 * @param texture - Group of textures. [code]
 * @returns Lowest and highest depth of water that a metre of such soil holds for plants. [mm/m]
 * @source UC Drought Management, soil characteristics; the group 'by feel' by the feel-and-appearance page of USDA-NRCS.
 * @example availableWaterRange('sandy loams, fine sandy loams') // 104 to 146, 1.25 to 1.75 in/ft
 */
export function availableWaterRange(texture: TextureGroup): AvailableWaterRange {
  const [from, to] = INCHES_PER_FOOT[texture];
  const convert = (inchesPerFoot: number) =>
    finiteQuantity<'mm/m'>((inchesPerFoot / INCHES_IN_A_FOOT) * MILLIMETRES_PER_METRE, 'AVAILABLE_WATER_OUT_OF_DOMAIN');
  return { from: convert(from), to: convert(to) };
}

/**
 * Group of textures of the published ranges to which a texture belongs.
 *
 * @param texture - Texture of the soil. [code]
 * @returns Its group. [code]
 * @source UC Drought Management, soil characteristics.
 */
export function textureGroupOf(texture: SoilTexture): TextureGroup {
  return GROUP_OF[texture];
}
