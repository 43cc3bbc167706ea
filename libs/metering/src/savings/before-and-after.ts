import type { SavingsMonth } from './need-baseline.js';

/** A month as its account has it: null where metered or need is not known, or the month is not over. */
export interface KnownMonth {
  readonly month: string;
  readonly days: number;
  readonly neededLitres: number | null;
  readonly meteredLitres: number | null;
}

/** The months that a saving is told from. */
export interface BeforeAndAfter {
  readonly before: readonly SavingsMonth[];
  readonly after: readonly SavingsMonth[];
  /** Months of the period that are left out, because metered or need is not known, or the work was done in them. */
  readonly leftOut: readonly string[];
}

/** First and last month of a report. */
export interface SavingsPeriod {
  readonly from: string;
  readonly until: string;
}

/** A baseline older than this speaks of other plants and pipes. */
const MOST_BASELINE_MONTHS = 36;

/**
 * Divides a property's months at its first work: whole months before it, and those of the period after it.
 *
 * The month of the work itself belongs to neither.
 *
 * @param months - Months, oldest first. [L]
 * @param firstWork - Month in which work was first done. [code]
 * @param period - First and last month of the report. [code]
 * @returns Months of the baseline and of the period. [L]
 * @source IPMVP: baseline, installation and reporting periods are kept apart. Secondary source.
 */
export function beforeAndAfter(months: readonly KnownMonth[], firstWork: string, period: SavingsPeriod): BeforeAndAfter {
  const known = months.filter((month): month is SavingsMonth => month.neededLitres !== null && month.meteredLitres !== null);
  const before = known.filter(({ month }) => month < firstWork).slice(-MOST_BASELINE_MONTHS);
  const isIn = ({ month }: { readonly month: string }): boolean => month >= period.from && month <= period.until;
  const after = known.filter((month) => isIn(month) && month.month > firstWork);
  const counted = new Set(after.map(({ month }) => month));
  return { before, after, leftOut: months.filter(isIn).flatMap(({ month }) => (counted.has(month) ? [] : [month])) };
}
