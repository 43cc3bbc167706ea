import type { DayField, DayNote, Piece, SettledDay } from '../station/day-values.js';

/** A day of fewer hours leaves a value missing. Common practice, no source. */
const FEWEST_HOURS = 22;
const HOURS_OF_DAY = 24;

/** How the hours of a day make its value; `course` sums what rises and falls steadily, so that an hour that is not known lies between its neighbours. */
export interface HourlyValue {
  readonly field: DayField;
  /** The name of the hourly value among a piece's values. */
  readonly from: string;
  /** As the file writes the column. */
  readonly column: string;
  readonly by: 'highest' | 'lowest' | 'mean' | 'sum' | 'course';
}

const reduce: Readonly<Record<HourlyValue['by'], (values: readonly number[]) => number>> = {
  highest: (values) => Math.max(...values),
  lowest: (values) => Math.min(...values),
  mean: (values) => total(values) / values.length,
  sum: (values) => Math.max(0, total(values)),
  course: (values) => Math.max(0, total(values)),
};

/**
 * The hours of a day with those that are not known on the straight line between the known ones before and after, or as the only one beside them:
 * two hours of noon left out would take a quarter of the day's sun.
 *
 * @source Common practice, no source.
 */
function bridged(pieces: readonly Piece[], from: string): readonly number[] {
  const known = pieces
    .flatMap(({ part, values }) => (typeof values[from] === 'number' ? [{ hour: Number(part), value: values[from] }] : []))
    .sort((one, other) => one.hour - other.hour);
  return Array.from({ length: HOURS_OF_DAY }, (_, hour) => {
    const after = known.find((each) => each.hour >= hour) ?? known.at(-1)!;
    const before = known.findLast((each) => each.hour <= hour) ?? after;
    const way = after.hour - before.hour;
    return way === 0 ? after.value : before.value + ((after.value - before.value) * (hour - before.hour)) / way;
  });
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** A day from its hours: a value of too few hours is missing, and a sum of not quite all of them, or one that was bridged, is told. */
export function dayOfHours(pieces: readonly Piece[], wanted: readonly HourlyValue[]): SettledDay {
  const values: { [Field in DayField]?: number | null } = {};
  const notes: DayNote[] = [];
  for (const { field, from, column, by } of wanted) {
    const known = pieces.map((piece) => piece.values[from] ?? null).filter((value) => value !== null);
    const hours = by === 'course' && known.length >= FEWEST_HOURS ? bridged(pieces, from) : known;
    values[field] = known.length < FEWEST_HOURS ? null : reduce[by](hours);
    const parts = { column, found: String(known.length) };
    if (known.length < FEWEST_HOURS) notes.push({ code: 'HOURS_TOO_FEW', parts: { ...parts, expected: String(FEWEST_HOURS) } });
    else if (by === 'sum' && known.length < HOURS_OF_DAY) notes.push({ code: 'SUM_OF_FEWER_HOURS', parts });
    else if (by === 'course' && known.length < HOURS_OF_DAY) notes.push({ code: 'HOURS_BRIDGED', parts });
  }
  return { values, notes };
}
