import { type FileName, importFiles } from '../../columns/import-files.js';
import type { StoredFact } from './stored-facts.repository.js';

type Typed = Readonly<Record<string, string>>;

/** Whether a file has every column of its kind: then nothing that is stored stays. */
export function isWhole(file: FileName, columns: ReadonlySet<string>): boolean {
  return Object.keys(importFiles[file]).every((column) => columns.has(column));
}

/** The cells of a row over those that are stored, which stay where the file lacks their column. */
export function typedOver(before: StoredFact<unknown> | null, typed: Typed, columns: ReadonlySet<string>): Record<string, string> {
  const others = Object.entries(before?.typed ?? {}).filter(([column]) => !columns.has(column));
  return { ...Object.fromEntries(others), ...typed };
}

/** The row's value, or the stored one where the file lacks the column. */
export function valueOver<Value>(before: StoredFact<Value> | null, value: Value, given: boolean): Value {
  return given || !before ? value : before.value;
}
