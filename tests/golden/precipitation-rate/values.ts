/** Total area method, PR = 96.25 Q / A: flow [gpm], area [ft2], printed rate [in/h], half of the last printed digit. */
export const totalAreaRates = [
  { gallonsPerMinute: 12, squareFeet: 1000, inchesPerHour: 1.155, tolerance: 0.001 },
  { gallonsPerMinute: 8, squareFeet: 900, inchesPerHour: 0.86, tolerance: 0.005 },
  { gallonsPerMinute: 6, squareFeet: 750, inchesPerHour: 0.77, tolerance: 0.005 },
] as const;

/** Metric drip: 2 emitters of 3 L/h on each square metre, need 2.3 L/m2/d, printed run 23 min/d. */
export const metricDrip = { litresPerHour: 6, squareMetres: 1, neededMm: 2.3, minutesPerDay: 23, tolerance: 0.5 } as const;

/** Cycle limit RTmax = 60 ASA / (PR - IR): 0.20 in, 1.6 in/h, 0.10 in/h give 8.0 min. */
export const cycleLimitExample = { accumulationIn: 0.2, rateInPerH: 1.6, intakeInPerH: 0.1, minutes: 8, tolerance: 0.01 } as const;
