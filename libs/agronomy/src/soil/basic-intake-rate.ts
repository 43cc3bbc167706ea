import { millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from './soil-texture.js';

/** Basic intake rate by texture, in in/h as the table prints it; silt loam, which it lacks, lies between loam and clay loam. */
const INCHES_PER_HOUR_BY_TEXTURE: Readonly<Record<SoilTexture, number>> = {
  sand: 0.6,
  'loamy sand': 0.5,
  'sandy loam': 0.4,
  loam: 0.35,
  'silt loam': 0.3,
  'clay loam': 0.2,
  'silty clay': 0.15,
  clay: 0.1,
};

/**
 * Basic intake rate of a soil, IR: what goes in once the surface is wet.
 *
 * @param texture - Texture of the soil. [code]
 * @returns Intake rate. [mm/h]
 * @source Irrigation trade scheduling table (2005); its intake values as published, the textures beside them from memory.
 */
export function basicIntakeRate(texture: SoilTexture): Quantity<'mm/h'> {
  return millimetresPerHourFromInchesPerHour(INCHES_PER_HOUR_BY_TEXTURE[texture]);
}
