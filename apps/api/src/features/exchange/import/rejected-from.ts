import { columnsByKey, plainKey } from '../columns/import-files.js';
import type { Problem } from '../problems/problem.js';
import type { AcceptedRow, ReadFile, RejectedRow } from '../rows/imported-row.js';

/** A good row of a file that the database cannot take, as a rejected one with its cells in the order of the header line. */
export function rejectedFrom(file: ReadFile, row: AcceptedRow, problem: Problem): RejectedRow {
  const known = columnsByKey(file.file);
  const cells = file.header.map((heading) => row.typed[known.get(plainKey(heading)) ?? ''] ?? '');
  return { verdict: 'rejected', line: row.line, cells, problems: [problem], warnings: row.warnings };
}
