/** Landscape water requirement of a hydrozone: ETo and effective rain [in], area [ft2], printed multiplier and gallons a month. */
export const hydrozone = {
  eto: 6,
  landscapeCoefficient: 0.7,
  effectiveRain: 0.3,
  uniformity: 0.65,
  squareFeet: 1000,
  multiplier: 1.2658,
  gallons: 3077,
  relativeTolerance: 0.002,
} as const;

/** Default distribution uniformity of the low quarter. */
export const defaultUniformities = [
  ['drip', 0.7],
  ['subsurface drip', 0.9],
  ['spray', 0.65],
  ['microspray', 0.7],
  ['rotor', 0.7],
] as const;
