/** Scheduling multiplier by distribution uniformity of the low quarter, as printed to two decimals. */
export const multiplierTable = [
  [1.0, 1.0],
  [0.9, 1.06],
  [0.8, 1.14],
  [0.75, 1.18],
  [0.7, 1.22],
  [0.65, 1.27],
  [0.6, 1.32],
  [0.55, 1.37],
  [0.5, 1.43],
] as const;

/** Half of the last printed digit. */
export const multiplierTolerance = 0.005;
