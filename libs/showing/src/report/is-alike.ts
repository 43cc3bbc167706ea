/** Up to this share of the need. [–] */
const ALIKE_SHARE = 0.1;

/**
 * Whether two volumes are so near that a reader takes them for alike. A gap that lies within what can be measured may be a third of the need: of it
 * "about the same" would read as wrong beside the figures, and it is said that they may be off by as much.
 *
 * @param gapLitres - what one is above the other [L]
 * @param neededLitres - what the plants needed [L]
 * @returns whether the gap is at most a tenth of the need; a tenth is a choice of this product
 */
export const isAlike = (gapLitres: number, neededLitres: number): boolean => Math.abs(gapLitres) <= ALIKE_SHARE * neededLitres;
