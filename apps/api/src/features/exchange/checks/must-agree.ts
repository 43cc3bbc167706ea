import { sameValue } from '../columns/column.js';
import type { DraftRow } from '../drafts/draft-row.js';

/** Refuses the lines of one group that differ from its first line in a field. */
export function mustAgree(rows: readonly DraftRow[], field: string, column: string): void {
  const first = rows[0];
  if (!first) return;
  const agreed = first.values[field];
  for (const row of rows.slice(1)) {
    if (sameValue(row.values[field], agreed)) continue;
    row.refuse('SETTINGS_DISAGREE', { column, found: row.found(column), expected: first.found(column), otherLine: first.line });
  }
}
