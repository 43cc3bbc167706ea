/** US gallons in other units of volume, with the relative tolerance of the print. */
export const gallonsIn = { CCF: 748.05, m3: 264.172, ft3: 7.4805, relativeTolerance: 1e-4 } as const;

/** Gallons of an inch of water on a square foot: 0.6233, printed to four decimals. */
export const gallonsPerInchSquareFoot = { gallons: 0.6233, tolerance: 0.0001 } as const;
