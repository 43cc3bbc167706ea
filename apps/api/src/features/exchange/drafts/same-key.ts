import type { DraftRow } from './draft-row.js';
import { KeyTable, keyOf } from './key-table.js';

/**
 * Refuses the second of two rows with one key, naming both lines. A row whose key could not be read has none.
 *
 * @param columns the columns of the key, for the sentence
 */
export function sameKeyCheck(
  ...columns: readonly string[]
): (row: DraftRow, parts: readonly (string | number | null | undefined)[]) => void {
  const seen = new KeyTable();
  return (row, parts) => {
    if (parts.some((part) => part === undefined)) return;
    const otherLine = seen.firstSeen(keyOf(...(parts as readonly (string | number | null)[])), row.line);
    if (otherLine === null) return;
    row.refuse('DUPLICATE_ROW', {
      column: columns.at(-1) ?? null,
      found: row.found(columns.at(-1) ?? ''),
      expected: columns.join(', '),
      otherLine,
    });
  };
}

/** A value that must be there to make a key: null and unread values make none. */
export function keyPart<Value extends string | number>(value: Value | null | undefined): Value | undefined {
  return value ?? undefined;
}
