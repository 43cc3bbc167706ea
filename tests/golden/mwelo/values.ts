/** Yearly allowance (MAWA): ETo [in/yr], areas [ft2], printed gallons a year, tolerance [gal]. */
export const allowances = [
  { eto: 51.1, etaf: 0.7, irrigated: 50_000, special: 0, gallons: 1_108_870, tolerance: 1 },
  { eto: 51.1, etaf: 0.7, irrigated: 50_000, special: 2_000, gallons: 1_127_808, tolerance: 340 },
  { eto: 43, etaf: 0.55, irrigated: 2_453, special: 68, gallons: 36_784, tolerance: 1 },
] as const;

/** Rows of a filled-in Appendix B worksheet, ETo 43.0 in: plant factor, irrigation efficiency, printed ETAF, area [ft2], printed gallons. */
export const worksheetRows = [
  { plantFactor: 0.5, efficiency: 0.81, etaf: 0.617, squareFeet: 204, gallons: 3_355.64 },
  { plantFactor: 0.2, efficiency: 0.81, etaf: 0.247, squareFeet: 1_310, gallons: 8_626.38 },
  { plantFactor: 0.8, efficiency: 0.75, etaf: 1.067, squareFeet: 677, gallons: 19_258.09 },
  { plantFactor: 0.2, efficiency: 0.81, etaf: 0.247, squareFeet: 194, gallons: 1_277.49 },
  { plantFactor: 1, efficiency: 1, etaf: 1, squareFeet: 68, gallons: 1_812.88 },
] as const;

/** Totals printed on the same worksheet. */
export const worksheetTotals = { eto: 43, gallons: 34_330.48, relativeTolerance: 0.002 } as const;

/** Monthly reference evapotranspiration [in] with the yearly figure printed beside it, Vacaville (city). */
export const vacaville = {
  monthlyEto: [0.7, 1.4, 3.2, 5.2, 6.3, 7.6, 8.2, 7.2, 5.5, 4.3, 1.6, 1.1],
  yearlyEto: 52.3,
  tolerance: 0.05,
} as const;
