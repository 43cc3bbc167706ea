import { type Columns, Fault } from '../columns/column.js';
import { type FileName, importFiles } from '../columns/import-files.js';
import { DraftRow } from '../drafts/draft-row.js';
import type { RawRecord } from '../files/table-file.js';
import { unguarded } from './csv-cell.js';
import type { Header } from './read-header.js';

const SPREADSHEET_ERROR = /^#(?:N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|GETTING_DATA)$/i;

/** Reads the cells of a row, each by its column; what cannot be read is a problem of that cell, and the others are read all the same. */
export function readRow(fileName: string, file: FileName, header: Header, record: RawRecord): DraftRow {
  const row = new DraftRow(fileName, file, record.line, record.cells, header.given);
  const columns: Columns = importFiles[file];
  for (const [name, column] of Object.entries(columns)) if (!header.given.has(name)) row.values[column.field] = column.blank;
  for (const [place, name] of header.places) readCell(row, columns, name, record.cells[place] ?? '');
  const extra = record.cells.slice(header.cells.length).find((cell) => cell.trim() !== '');
  if (extra !== undefined) row.refuse('TOO_MANY_CELLS', { found: extra });
  return row;
}

function readCell(row: DraftRow, columns: Columns, name: string, cell: string): void {
  const column = columns[name];
  if (!column) return;
  const typed = unguarded(cell);
  const text = typed.trim();
  if (text === '') {
    if (column.required) row.refuse('MISSING_VALUE', { column: name });
    else row.values[column.field] = column.blank;
    return;
  }
  row.typed[name] = typed;
  if (SPREADSHEET_ERROR.test(text)) {
    row.refuse('SPREADSHEET_ERROR', { column: name, found: text });
    return;
  }
  const value = column.cell.read(text);
  if (value instanceof Fault) row.refuse(value.code, { column: name, found: value.found ?? text, expected: value.expected });
  else row.values[column.field] = value;
}
