import type { Figure, ReportRow, ReportTable } from './report-model.js';

const MOST_NAMED = 4;

/** A table with the reasons of what is not known under it: each reason once, with the rows that it is of. */
export function withNotes(table: Omit<ReportTable, 'notes'>, alsoRows: (count: number) => string): ReportTable {
  const rowsOf = new Map<string, string[]>();
  for (const row of table.rows) for (const reason of reasonsOf(row)) rowsOf.set(reason, [...(rowsOf.get(reason) ?? []), row.label]);
  const named = (rows: readonly string[]): string => {
    const [shown, left] = [rows.slice(0, MOST_NAMED), rows.length - MOST_NAMED];
    return left > 0 ? `${shown.join(', ')} ${alsoRows(left)}` : shown.join(', ');
  };
  return { ...table, notes: [...rowsOf].map(([reason, rows]) => `${named(rows)}: ${reason}`) };
}

const reasonsOf = ({ cells }: ReportRow): Set<string> =>
  new Set(cells.flatMap(({ value, reason }: Figure) => (value === null && reason !== null ? [reason] : [])));
