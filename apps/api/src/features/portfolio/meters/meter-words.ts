/** What runs through a meter: irrigation alone, or indoor use too. */
export const meterKinds = ['irrigation', 'mixed'] as const;
export type MeterKind = (typeof meterKinds)[number];

/** Where a meter's water comes from. */
export const waters = ['potable', 'recycled', 'well'] as const;
export type Water = (typeof waters)[number];
