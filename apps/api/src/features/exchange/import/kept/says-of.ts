import type { Columns } from '../../columns/column.js';
import { type FileName, importFiles } from '../../columns/import-files.js';
import type { Says } from './merge-kept.js';

/**
 * What a file says, from the columns that it has. A column fills the property of its field's name.
 *
 * @param otherwise properties that are filled by a column of another field
 */
export function saysOf(file: FileName, columns: ReadonlySet<string>, otherwise: Readonly<Record<string, string>> = {}): Says {
  const known: Columns = importFiles[file];
  const own = Object.entries(known).flatMap(([column, { field }]) => (columns.has(column) ? [field] : []));
  const others = Object.entries(otherwise).flatMap(([property, column]) => (columns.has(column) ? [property] : []));
  return { columns, properties: new Set([...own, ...others]) };
}
