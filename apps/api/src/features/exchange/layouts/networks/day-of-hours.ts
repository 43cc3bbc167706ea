import type { DayField, DayNote, Piece, SettledDay } from '../station/day-values.js';

/** A day of fewer hours leaves a value missing. Common practice, no source. */
const FEWEST_HOURS = 22;
const HOURS_OF_DAY = 24;

/** How the hours of a day make its value. */
export interface HourlyValue {
  readonly field: DayField;
  /** The name of the hourly value among a piece's values. */
  readonly from: string;
  /** As the file writes the column. */
  readonly column: string;
  readonly by: 'highest' | 'lowest' | 'mean' | 'sum';
}

const reduce: Readonly<Record<HourlyValue['by'], (values: readonly number[]) => number>> = {
  highest: (values) => Math.max(...values),
  lowest: (values) => Math.min(...values),
  mean: (values) => total(values) / values.length,
  sum: (values) => Math.max(0, total(values)),
};

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** A day from its hours: a value of too few hours is missing, and a sum of not quite all of them is told. */
export function dayOfHours(pieces: readonly Piece[], wanted: readonly HourlyValue[]): SettledDay {
  const values: { [Field in DayField]?: number | null } = {};
  const notes: DayNote[] = [];
  for (const { field, from, column, by } of wanted) {
    const known = pieces.map((piece) => piece.values[from] ?? null).filter((value) => value !== null);
    values[field] = known.length < FEWEST_HOURS ? null : reduce[by](known);
    const parts = { column, found: String(known.length) };
    if (known.length < FEWEST_HOURS) notes.push({ code: 'HOURS_TOO_FEW', parts: { ...parts, expected: String(FEWEST_HOURS) } });
    else if (by === 'sum' && known.length < HOURS_OF_DAY) notes.push({ code: 'SUM_OF_FEWER_HOURS', parts });
  }
  return { values, notes };
}
