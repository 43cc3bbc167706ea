import { type NeedBaseline, type SavingsMonth, spreadOf } from './need-baseline.js';
import { varianceOfSum } from './month-to-month.js';
import { onCalendar } from './on-calendar.js';
import { onNeedLine, pullOfErrors } from './need-line.js';
import { studentQuantile } from './student-quantile.js';

/** Water that was not used, against the baseline at the need that really came. Below zero: more was used. */
export interface AvoidedUse {
  readonly litres: number;
  /** Half-width of the interval at the confidence asked for. [L] */
  readonly halfWidthLitres: number;
  readonly sdLitres: number;
  /** What the baseline says would have been metered. [L] */
  readonly expectedLitres: number;
  readonly meteredLitres: number;
  /** Whether the interval leaves zero out. */
  readonly isSure: boolean;
  /** Months whose need lies outside what the baseline has seen. */
  readonly monthsOutsideRange: readonly string[];
}

/** A need this much above or below the baseline's own is no longer a reading of it. */
const RANGE_SLACK = 1.1;

/**
 * Avoided use of some months: what the baseline expects at their need, less what was metered.
 *
 * Var = sd² · (gᵀRg + vᵀRv − 2 gᵀRv): errors of the line and of the months themselves, following each other from month to month
 *
 * @param baseline - The baseline of the property. [L]
 * @param months - Whole months after the work, oldest first; some between may be missing. [L]
 * @param confidence - Share of cases that the interval is to hold. [–]
 * @returns Avoided use and its interval. [L]
 * @source IPMVP: avoided use = adjusted baseline − metered use; ASHRAE Guideline 14: uncertainty with autocorrelated errors. Secondary sources.
 * @example avoidedUse(fitNeedBaseline(before), after, 0.9).halfWidthLitres
 */
export function avoidedUse(baseline: NeedBaseline, months: readonly SavingsMonth[], confidence: number): AvoidedUse {
  const { line, sd, correlation, freedom, meanLitres } = baseline;
  const expected = months.map((month) => onNeedLine(line, month));
  const total = { days: sumOf(months.map(({ days }) => days)), neededLitres: sumOf(months.map(({ neededLitres }) => neededLitres)) };
  const pulls = pullOfErrors(line, baseline.months, total);
  const weights = onCalendar([
    ...baseline.months.map(({ month }, at) => ({ month, value: pulls[at] ?? Number.NaN })),
    ...months.map(({ month }, at) => ({ month, value: -spreadOf(expected[at] ?? Number.NaN, meanLitres) })),
  ]).map((each) => each ?? 0);
  const sdLitres = sd * Math.sqrt(varianceOfSum(weights, correlation));
  const halfWidthLitres = studentQuantile(confidence, freedom) * sdLitres;
  const [expectedLitres, meteredLitres] = [sumOf(expected), sumOf(months.map(({ meteredLitres: each }) => each))];
  const litres = expectedLitres - meteredLitres;
  return {
    litres,
    halfWidthLitres,
    sdLitres,
    expectedLitres,
    meteredLitres,
    isSure: Math.abs(litres) > halfWidthLitres,
    monthsOutsideRange: outsideRange(baseline, months),
  };
}

function outsideRange(baseline: NeedBaseline, months: readonly SavingsMonth[]): string[] {
  const perDay = ({ neededLitres, days }: SavingsMonth): number => neededLitres / days;
  const seen = baseline.months.map(perDay);
  const [low, high] = [Math.min(...seen) / RANGE_SLACK, Math.max(...seen) * RANGE_SLACK];
  return months.filter((month) => perDay(month) < low || perDay(month) > high).map(({ month }) => month);
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
