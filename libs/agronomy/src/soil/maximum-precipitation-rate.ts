import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { SoilTexture } from './soil-texture.js';

/** Classes of soil of the table. */
export type IntakeClass =
  | 'coarse sandy'
  | 'coarse sandy over compact subsoil'
  | 'light sandy loam'
  | 'light sandy loam over compact subsoil'
  | 'silt loam'
  | 'silt loam over compact subsoil'
  | 'heavy clay or clay loam';

/** Whether plants cover the ground. */
export type GroundCover = 'covered' | 'bare';

/** Upper ends of the table's classes of slope but the last. [%] */
const UPPER_ENDS = [5, 8, 12] as const;

/** Rates of the four classes of slope [in/h], the flattest first, from memory. */
const INCHES_PER_HOUR: Readonly<Record<IntakeClass, Readonly<Record<GroundCover, readonly number[]>>>> = {
  'coarse sandy': { covered: [2, 2, 1.5, 1], bare: [2, 1.5, 1, 0.5] },
  'coarse sandy over compact subsoil': { covered: [1.75, 1.25, 1, 0.75], bare: [1.5, 1, 0.75, 0.4] },
  'light sandy loam': { covered: [1.75, 1.25, 1, 0.75], bare: [1, 0.8, 0.6, 0.4] },
  'light sandy loam over compact subsoil': { covered: [1.25, 1, 0.75, 0.5], bare: [0.75, 0.5, 0.4, 0.3] },
  'silt loam': { covered: [1, 0.8, 0.6, 0.4], bare: [0.5, 0.4, 0.3, 0.2] },
  'silt loam over compact subsoil': { covered: [0.6, 0.5, 0.4, 0.3], bare: [0.3, 0.25, 0.15, 0.1] },
  'heavy clay or clay loam': { covered: [0.2, 0.15, 0.12, 0.1], bare: [0.15, 0.1, 0.08, 0.06] },
};

/** Class of each texture; nothing is known of the subsoil, so it is taken as not compact. */
const BY_TEXTURE: Readonly<Record<SoilTexture, IntakeClass>> = {
  sand: 'coarse sandy',
  'loamy sand': 'coarse sandy',
  'sandy loam': 'light sandy loam',
  loam: 'silt loam',
  'silt loam': 'silt loam',
  'clay loam': 'heavy clay or clay loam',
  'silty clay': 'heavy clay or clay loam',
  clay: 'heavy clay or clay loam',
};

/**
 * Class of soil of a texture in the table of maximum precipitation rates.
 *
 * @param texture - Texture of the soil. [code]
 * @returns The class, with a subsoil that is not compact. [code]
 * @source Assignment by name; an assumption for loam, which the table lacks and which is taken as silt loam.
 */
export function intakeClassOf(texture: SoilTexture): IntakeClass {
  return BY_TEXTURE[texture];
}

/**
 * Highest precipitation rate that a soil takes for long without runoff.
 *
 * @param intakeClass - Class of soil. [code]
 * @param slope - Rise over run; 5, 8 and 12 belong to the flatter class. [%]
 * @param groundCover - Whether plants cover the ground. [code]
 * @returns Precipitation rate. [mm/h]
 * @throws {DomainError} `SLOPE_OUT_OF_DOMAIN` when negative or not finite.
 * @source USDA table of maximum precipitation rates, as reprinted widely; from memory, no official text read.
 */
export function maximumPrecipitationRate(intakeClass: IntakeClass, slope: number, groundCover: GroundCover): Quantity<'mm/h'> {
  if (!(slope >= 0 && Number.isFinite(slope))) throw new DomainError('SLOPE_OUT_OF_DOMAIN', { slope });
  const found = UPPER_ENDS.findIndex((end) => slope <= end);
  const at = found < 0 ? UPPER_ENDS.length : found;
  return millimetresPerHourFromInchesPerHour(INCHES_PER_HOUR[intakeClass][groundCover][at] as number);
}
