/** What one percent adjustment of a controller holds for. */
export const adjustScopes = ['controller', 'program'] as const;
export type AdjustScope = (typeof adjustScopes)[number];
