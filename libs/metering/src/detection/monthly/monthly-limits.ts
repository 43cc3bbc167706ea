/**
 * Limits of the monthly instrument, as normal scores. A property may have 0.1 false alarms in a year of 12 to 13 readings, for all tests together.
 * One reading and two together carry nearly all of it, because they are to find a change in time.
 */
export const monthlyLimits = {
  /** Before three readings have made a habit, only what the flows on record cannot be off by: a chance of 0.00003. */
  beforeHabit: 4,
  /** Too little that yet delivers is learnt anew beyond this: nobody is told. */
  single: 3.6,
  /** Slow growth: slack and decision of the cumulative sum; a false alarm in more than 4,000 readings (Siegmund's approximation). */
  slack: 0.5,
  decision: 7,
  /** A change ends when the odds that it has are e³, twenty to one, on readings within two standard deviations of the habit. */
  endOdds: 3,
  endScore: 2,
} as const;

/** Readings that make a habit: common practice. */
export const FEWEST_READINGS = 3;

/** Readings after which a change of the ratio can be told: how little they say of the ratio is in the score. */
export const FEWEST_BEFORE_CHANGE = 2;

/** Readings that are kept for those that are judged together, less the newest. */
export const MOST_TOGETHER = 5;

/**
 * Readings that are judged together, and the limit of each such window where months scatter little. A finding that was wrong hides nothing larger
 * (`grownAnew`), so the limits are as low as a tenth of a false alarm a property and year lets them be.
 */
const WINDOWS: readonly (readonly [readings: number, limit: number])[] = [
  [1, 2.4],
  [2, 2.1],
  [3, 2.6],
  [6, 3],
];

/**
 * Added as months scatter more: a tenth of the water cannot be found there within two readings at any limit that is of use, and what months
 * scatter is itself less sure there at first, so the chances are spent where it can.
 */
const MORE_AT_LARGE_NOISE = 1.5;
const SMALL_NOISE = 0.016;
const LARGE_NOISE = 0.044;

/**
 * Readings that come more often are judged more often: as a limit that keeps the chance of a year rises by 0.22 each time that they come twice as often
 * (from 0.0026 to 0.0013 it is 2.80 to 3.01).
 */
const USUAL_DAYS = 29;
const MORE_WHEN_TWICE_AS_OFTEN = 0.22;

/**
 * The windows of readings that are judged together, with their limits.
 *
 * @param noise - Relative standard deviation by which months are taken to scatter. [–]
 * @param days - Days from one reading to the next. [d]
 * @returns How many readings, the newest among them, and the normal score beyond which they are a change. [–]
 */
export function windowLimits(noise: number, days: number): typeof WINDOWS {
  const large = Math.min(1, Math.max(0, (noise - SMALL_NOISE) / (LARGE_NOISE - SMALL_NOISE)));
  const more = MORE_AT_LARGE_NOISE * large + MORE_WHEN_TWICE_AS_OFTEN * Math.max(0, Math.log2(USUAL_DAYS / days));
  return WINDOWS.map(([readings, limit]) => [readings, limit + more] as const);
}
