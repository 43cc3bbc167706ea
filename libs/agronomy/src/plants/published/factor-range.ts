/** Lowest and highest value that a source gives. */
export type FactorRange = { readonly low: number; readonly high: number };

/** Class of a factor in the landscape coefficient method. */
export type FactorClass = 'low' | 'average' | 'high';

/** Density factor by class, from memory. */
const DENSITY: Readonly<Record<FactorClass, FactorRange>> = {
  low: { low: 0.5, high: 0.9 },
  average: { low: 1, high: 1 },
  high: { low: 1.1, high: 1.3 },
};

/** Microclimate factor by class, from memory. */
const MICROCLIMATE: Readonly<Record<FactorClass, FactorRange>> = {
  low: { low: 0.5, high: 0.9 },
  average: { low: 1, high: 1 },
  high: { low: 1.1, high: 1.4 },
};

/**
 * Range of the density factor, kd: sparse or young planting is low, full cover average, planting in layers high.
 *
 * @param factorClass - Class of the planting's density. [code]
 * @returns Lowest and highest factor of the class. [–]
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California; from memory.
 */
export function densityRange(factorClass: FactorClass): FactorRange {
  return DENSITY[factorClass];
}

/**
 * Range of the microclimate factor, kmc: shaded and sheltered places are low, open ones average, windy or heated ones high.
 *
 * @param factorClass - Class of the place. [code]
 * @returns Lowest and highest factor of the class. [–]
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California; from memory.
 */
export function microclimateRange(factorClass: FactorClass): FactorRange {
  return MICROCLIMATE[factorClass];
}
