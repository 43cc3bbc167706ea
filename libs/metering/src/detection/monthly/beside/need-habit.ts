/**
 * A property's own ratio of metered to need is a habit from so many intervals, never surer than this: a timer that stays as it is follows no need.
 * Assumptions.
 */
const FEWEST = 4;
const MOST = 12;
const LEAST_SD = 0.15;

/** How far a ratio is beyond the habit, in standard deviations of it; and that standard deviation, of the logarithm. */
export interface BeyondHabit {
  readonly score: number;
  readonly sd: number;
}

/** A property's own ratio of metered to needed water: the history calibrates what the need leaves open. */
export class NeedHabit {
  private ratios: readonly number[] = [];

  /**
   * Learns from an interval.
   *
   * @param ratio - Logarithm of metered over needed. [–]
   */
  learn(ratio: number): void {
    this.ratios = [...this.ratios, ratio].slice(-MOST);
  }

  /**
   * How far a ratio is beyond the habit.
   *
   * @param ratio - Logarithm of metered over needed. [–]
   * @returns Score and standard deviation; an infinitely low score before there is a habit. [–]
   */
  beyond(ratio: number): BeyondHabit {
    const { length } = this.ratios;
    if (length < FEWEST) return { score: Number.NEGATIVE_INFINITY, sd: Number.POSITIVE_INFINITY };
    const mean = this.ratios.reduce((sum, one) => sum + one, 0) / length;
    const variance = this.ratios.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (length - 1);
    const sd = Math.max(LEAST_SD, Math.sqrt(variance)) * Math.sqrt(1 + 1 / length);
    return { score: (ratio - mean) / sd, sd };
  }
}
