/** What the end of a tier counts: units of volume, or shares of the property's allowance (1 is all of it). */
export const upToIsWords = ['volume', 'share of allowance'] as const;
export type UpToIs = (typeof upToIsWords)[number];
