import { columnsByKey, type FileName, importFiles, plainKey } from '../columns/import-files.js';
import { type Problem, problemAt } from '../problems/problem.js';
import { unguarded } from './csv-cell.js';

/** The column that a file of rejected rows carries beside the file's own: expected there, and never read. */
export const PROBLEM_COLUMN = 'problem';

/** A file's header line, understood. */
export interface Header {
  readonly cells: readonly string[];
  /** The known columns by their place in the row. */
  readonly places: readonly (readonly [number, string])[];
  readonly given: ReadonlySet<string>;
  readonly notices: readonly Problem[];
}

/** Reads a header line: columns in any order, matched without case, spaces and underscores. Returns the problems where it cannot be used. */
export function readHeader(fileName: string, file: FileName, line: number, cells: readonly string[]): Header | readonly Problem[] {
  const known = columnsByKey(file);
  const at = { file: fileName, line };
  const places: [number, string][] = [];
  const given = new Set<string>();
  const problems: Problem[] = [];
  const notices: Problem[] = [];
  cells.forEach((cell, place) => {
    const header = unguarded(cell).trim();
    const column = known.get(plainKey(header));
    if (column === undefined) {
      if (header !== '' && plainKey(header) !== PROBLEM_COLUMN)
        notices.push(problemAt(at, 'UNKNOWN_COLUMN', { column: header, found: header }));
    } else if (given.has(column)) {
      problems.push(problemAt(at, 'DUPLICATE_COLUMN', { column, found: header }));
    } else {
      given.add(column);
      places.push([place, column]);
    }
  });
  for (const [column, { required }] of Object.entries(importFiles[file])) {
    if (required && !given.has(column)) problems.push(problemAt(at, 'MISSING_COLUMN', { column }));
  }
  return problems.length > 0 ? problems : { cells, places, given, notices };
}
