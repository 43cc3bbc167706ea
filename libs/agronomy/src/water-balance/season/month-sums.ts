/** A month of sums. */
export type MonthSums<Name extends string> = {
  /** The month, YYYY-MM. */
  readonly month: string;
  /** Days of the month within the season. [–] */
  readonly dayCount: number;
} & Readonly<Record<Name, number>>;

/** Characters of YYYY-MM. */
const MONTH_LENGTH = 7;

/**
 * Sums of a season's terms by calendar month.
 *
 * @param days - Days with their date and terms, in order. [mm]
 * @param names - Terms to be summed. [code]
 * @returns One row of sums for each month. [mm]
 * @source Arithmetic.
 */
export function monthSums<Name extends string>(
  days: readonly ({ readonly date: string } & Readonly<Record<Name, number>>)[],
  names: readonly Name[],
): readonly MonthSums<Name>[] {
  const months = new Set(days.map(({ date }) => date.slice(0, MONTH_LENGTH)));
  return [...months].map((month) => {
    const members = days.filter(({ date }) => date.startsWith(month));
    return { month, dayCount: members.length, ...sumsOf(members, names) };
  });
}

/**
 * Sums of terms over days.
 *
 * @param days - Days with their terms. [mm]
 * @param names - Terms to be summed. [code]
 * @returns The sums by the terms' names. [mm]
 * @source Arithmetic.
 */
export function sumsOf<Name extends string>(
  days: readonly Readonly<Record<Name, number>>[],
  names: readonly Name[],
): Readonly<Record<Name, number>> {
  return Object.fromEntries(names.map((name) => [name, days.reduce((sum, day) => sum + day[name], 0)])) as Readonly<Record<Name, number>>;
}
