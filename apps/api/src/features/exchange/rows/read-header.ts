import type { Column, Columns } from '../columns/column.js';
import { columnsByKey, type FileName, importFiles, plainKey } from '../columns/import-files.js';
import { type Problem, problemAt } from '../problems/problem.js';
import { unguarded } from './csv-cell.js';

/** The column that a file of rejected rows carries beside the file's own: expected there, and never read. */
export const PROBLEM_COLUMN = 'problem';

/** A column and its place in the rows of a file. */
export interface PlacedColumn {
  readonly place: number;
  readonly name: string;
  readonly column: Column;
}

/** A file's header line, understood. */
export interface Header {
  readonly cells: readonly string[];
  /** The known columns by their place in the row. */
  readonly places: readonly PlacedColumn[];
  /** The values of the columns that the file does not have, by field. */
  readonly absent: Readonly<Record<string, unknown>>;
  readonly given: ReadonlySet<string>;
  readonly notices: readonly Problem[];
}

/** Reads a header line: columns in any order, matched without case, spaces and underscores. Returns the problems where it cannot be used. */
export function readHeader(fileName: string, file: FileName, line: number, cells: readonly string[]): Header | readonly Problem[] {
  const known = columnsByKey(file);
  const at = { file: fileName, line };
  const columns: Columns = importFiles[file];
  const places: PlacedColumn[] = [];
  const given = new Set<string>();
  const problems: Problem[] = [];
  const notices: Problem[] = [];
  cells.forEach((cell, place) => {
    const header = unguarded(cell).trim();
    const name = known.get(plainKey(header));
    const column = name === undefined ? undefined : columns[name];
    if (name === undefined || column === undefined) {
      if (header !== '' && plainKey(header) !== PROBLEM_COLUMN)
        notices.push(problemAt(at, 'UNKNOWN_COLUMN', { column: header, found: header }));
    } else if (given.has(name)) {
      problems.push(problemAt(at, 'DUPLICATE_COLUMN', { column: name, found: header }));
    } else {
      given.add(name);
      places.push({ place, name, column });
    }
  });
  const absent = Object.entries(columns).filter(([name]) => !given.has(name));
  for (const [column, { required }] of absent) if (required) problems.push(problemAt(at, 'MISSING_COLUMN', { column }));
  if (problems.length > 0) return problems;
  return { cells, places, absent: Object.fromEntries(absent.map(([, { field, blank }]) => [field, blank])), given, notices };
}
