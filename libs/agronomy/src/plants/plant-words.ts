/** What grows in a zone, in the import folder's words. */
export type Plants =
  | 'turf cool-season'
  | 'turf warm-season'
  | 'trees'
  | 'shrubs'
  | 'groundcover'
  | 'perennials'
  | 'annuals'
  | 'vegetables'
  | 'mixed';

/** Category of water need, in the import folder's words. */
export type WaterNeed = 'very low' | 'low' | 'moderate' | 'high';

/** How much sun a zone has, in the import folder's words. */
export type Sun = 'full' | 'part' | 'shade';

/** All words for plants. */
export const plantsWords: readonly Plants[] = [
  'turf cool-season',
  'turf warm-season',
  'trees',
  'shrubs',
  'groundcover',
  'perennials',
  'annuals',
  'vegetables',
  'mixed',
];

/** All categories of water need, the least first. */
export const waterNeeds: readonly WaterNeed[] = ['very low', 'low', 'moderate', 'high'];

/** All words for sun, the most first. */
export const sunWords: readonly Sun[] = ['full', 'part', 'shade'];
