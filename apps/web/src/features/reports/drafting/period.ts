const MONTHS_BACK = { month: 0, quarter: 2, year: 11 } as const;

export type PeriodLength = keyof typeof MONTHS_BACK;
export const LENGTHS = ['month', 'quarter', 'year'] as const satisfies readonly PeriodLength[];

/** First and last day of the months that end with one. */
export function periodOf(month: string, length: PeriodLength): { fromOn: string; untilOn: string } {
  const [year, at] = [Number(month.slice(0, 4)), Number(month.slice(5, 7))];
  const day = (y: number, m: number, d: number): string => new Date(Date.UTC(y, m, d)).toISOString().slice(0, 10);
  return { fromOn: day(year, at - 1 - MONTHS_BACK[length], 1), untilOn: day(year, at, 0) };
}

/** The newest month of which all days are known; the newest at all where none is. */
export function newestWhole(months: readonly string[], newest: string, through: string | null | undefined): string {
  if (!through?.startsWith(newest) || periodOf(newest, 'month').untilOn === through) return newest;
  return [...months].sort().findLast((month) => month < newest) ?? newest;
}
