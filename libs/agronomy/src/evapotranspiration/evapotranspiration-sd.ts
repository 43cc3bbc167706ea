import type { AssumedInput } from './assumed-input.js';

/** How a day's reference evapotranspiration came about. */
export type EvapotranspirationMethod = 'penman-monteith' | 'hargreaves-samani' | 'given';

/**
 * Relative standard deviation of a day by method, every input measured. Assumptions, in the order of size that comparisons with lysimeters
 * show (Jensen, Burman and Allen (1990), ASCE Manual 70, standard errors of daily methods, from memory).
 */
const BY_METHOD: Readonly<Record<EvapotranspirationMethod, number>> = { 'penman-monteith': 0.08, 'hargreaves-samani': 0.2, given: 0.1 };

/** What each assumed input adds, independent of the others. Assumptions; wind by FAO-56 Example 20, where 1 and 3 m/s for 2 m/s change 6 to 7 %. */
const BY_ASSUMED_INPUT: Readonly<Record<AssumedInput, number>> = {
  humidity: 0.06,
  wind: 0.07,
  'wind-height': 0.03,
  'solar-radiation': 0.1,
  elevation: 0.03,
};

/**
 * Relative standard deviation of a day's reference evapotranspiration, by method and what was assumed.
 *
 * sd = √(sd(method)² + Σ sd(input)²)
 *
 * @param method - How the value came about. [code]
 * @param assumed - What had to be assumed; counts for Penman-Monteith only, the others have it within. [code]
 * @returns Standard deviation over value. [–]
 * @source Assumption, stated as such: the sizes are common practice and not measured at any one station.
 */
export function evapotranspirationSd(method: EvapotranspirationMethod, assumed: readonly AssumedInput[]): number {
  const inputs = method === 'penman-monteith' ? assumed : [];
  return Math.hypot(BY_METHOD[method], ...inputs.map((input) => BY_ASSUMED_INPUT[input]));
}
