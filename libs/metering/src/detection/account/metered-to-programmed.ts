import { probabilityAboveZero } from '../../uncertainty/normal-probability.js';
import type { EarlierMonth } from './judge-input.js';

/** Months that a ratio needs before it is a habit: common practice. */
const FEWEST_MONTHS = 3;

/** A habit's spread is never taken as less than this: months differ by weather alone. */
const SMALLEST_SD = 0.03;

/** Ratios this near to 1 say nothing about flows; a spread beyond it is no habit. */
const LEAST_OFF = 0.1;

/** How far this month may stray from the habit and still follow it, in its standard deviations. */
const FOLLOWS_WITHIN_SDS = 2;

/** What a meter's earlier months say about metered over programmed, M/P. */
export interface RatioHistory {
  readonly months: number;
  readonly mean: number;
  readonly sd: number;
  /** The ratio has always been off by more than a tenth, and steadily so. */
  readonly alwaysOff: boolean;
  /** Probability that it is truly off. */
  readonly confidence: number;
}

/**
 * What a meter's earlier months say about the ratio of metered to programmed water.
 *
 * A steady ratio that has always been off says that recorded flows are wrong; one that becomes so says that something broke.
 *
 * @param history - Earlier months of any meter, in any order. [L]
 * @param meterId - The meter. [code]
 * @returns Mean, spread and judgement, or null where fewer than three months have both volumes. [–]
 */
export function ratioHistory(history: readonly EarlierMonth[], meterId: string): RatioHistory | null {
  const ratios = history.flatMap((each) =>
    each.meterId === meterId && each.meteredLitres !== null && each.programmedLitres !== null && each.programmedLitres > 0
      ? [each.meteredLitres / each.programmedLitres]
      : [],
  );
  if (ratios.length < FEWEST_MONTHS) return null;
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const variance = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / (ratios.length - 1);
  const sd = Math.max(SMALLEST_SD, Math.sqrt(variance));
  const off = Math.abs(mean - 1);
  const confidence = probabilityAboveZero(off, sd / Math.sqrt(ratios.length));
  return { months: ratios.length, mean, sd, alwaysOff: off > LEAST_OFF && sd <= LEAST_OFF * mean, confidence };
}

/**
 * Whether a month's ratio follows the meter's habit.
 *
 * @param ratio - This month's metered over programmed. [–]
 * @param habit - What earlier months say. [–]
 * @returns True within two standard deviations of the habit. [–]
 */
export function followsHabit(ratio: number, habit: RatioHistory): boolean {
  return Math.abs(ratio - habit.mean) <= FOLLOWS_WITHIN_SDS * habit.sd;
}
