/** Median absolute deviation to standard deviation, for a normal quantity. */
const NORMAL = 1.4826;

/** Where values lie and how far they spread, by ranks: a few wild ones do not move it. */
export interface RobustSpread {
  readonly median: number;
  readonly sd: number;
}

/**
 * Quantile by linear interpolation between ranks.
 *
 * @param values - The values, in any order; none of them NaN. [any]
 * @param share - Share of values below it, 0 to 1. [–]
 * @returns The quantile, NaN where there is no value. [any]
 */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = Float64Array.from(values).sort();
  if (!sorted.length) return Number.NaN;
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? Number.NaN;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}

/**
 * Median and standard deviation by the median absolute deviation.
 *
 * sd = 1.4826 · median |x − median x|
 *
 * @param values - The values, none of them NaN. [any]
 * @returns Both, NaN where there is no value. [any]
 * @source The factor 1.4826 makes it that of a normal quantity: 1 / Φ⁻¹(3/4).
 */
export function robustSpread(values: readonly number[]): RobustSpread {
  const median = quantile(values, 0.5);
  const off = values.map((value) => Math.abs(value - median));
  return { median, sd: NORMAL * quantile(off, 0.5) };
}
