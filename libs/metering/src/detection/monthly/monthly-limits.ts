/**
 * Limits of the monthly instrument. With 12 to 13 readings a year, a property may have at most 0.03 false alarms in a year: a chance of about
 * 0.0024 by the reading for all tests together. Two readings together carry nearly all of it, because a leak that lasts is in both.
 */
export const monthlyLimits = {
  /** One reading alone: a chance of 0.00016. Only breaks are meant, which are many times beyond it. */
  single: 3.6,
  /** Before three readings have made a habit, only what the flows on record cannot be off by: a chance of 0.00003. */
  beforeHabit: 4,
  /** Slow growth: slack and decision of the cumulative sum; a false alarm in more than 4,000 readings (Siegmund's approximation). */
  slack: 0.5,
  decision: 7,
  /** A change ends when the odds that it has are e³, twenty to one, on readings within two standard deviations of the habit. */
  endOdds: 3,
  endScore: 2,
} as const;

/** Readings that make a habit: common practice. */
export const FEWEST_READINGS = 3;

/** Two readings together, where the noise is small: nominally a chance of 0.008, and a quarter of it in fact, since the noise is overestimated. */
const PAIR_AT_SMALL_NOISE = 2.38;

/** Added where the noise is large, and so no longer overestimated: the chance is 0.001. */
const PAIR_MORE = 0.77;
const SMALL_NOISE = 0.034;
const LARGE_NOISE = 0.041;

/**
 * Limit for two readings together.
 *
 * Noise is learnt from an assumption on the safe side and never taken as less than its floor, so that at a noise of 3 % scores are too small;
 * the limit takes that back. At noises where nothing is overestimated it is that of the normal distribution.
 *
 * @param noise - Relative standard deviation by which months are taken to scatter. [–]
 * @returns The normal score beyond which the two are a change. [–]
 */
export function pairLimit(noise: number): number {
  const large = Math.min(1, Math.max(0, (noise - SMALL_NOISE) / (LARGE_NOISE - SMALL_NOISE)));
  return PAIR_AT_SMALL_NOISE + PAIR_MORE * large;
}
