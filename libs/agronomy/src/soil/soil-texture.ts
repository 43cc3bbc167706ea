/** Texture of a soil, in the import folder's words. */
export type SoilTexture = 'sand' | 'loamy sand' | 'sandy loam' | 'loam' | 'silt loam' | 'clay loam' | 'silty clay' | 'clay';

/** All textures, the coarsest first. */
export const soilTextures: readonly SoilTexture[] = [
  'sand',
  'loamy sand',
  'sandy loam',
  'loam',
  'silt loam',
  'clay loam',
  'silty clay',
  'clay',
];

/** Texture where nobody stated one. An assumption: the middle of the table. */
const ASSUMED_TEXTURE: SoilTexture = 'loam';

/**
 * Texture of a zone's soil: as stated, else loam.
 *
 * @param stated - The texture that somebody stated, or null. [code]
 * @returns The texture, and whether it was assumed. [code]
 * @source Assumption: loam lies in the middle of the table in both available water and intake.
 */
export function soilTexture(stated: SoilTexture | null): { readonly texture: SoilTexture; readonly assumed: boolean } {
  return { texture: stated ?? ASSUMED_TEXTURE, assumed: stated === null };
}
