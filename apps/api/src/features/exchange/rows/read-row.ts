import { Fault } from '../columns/column.js';
import type { FileName } from '../columns/import-files.js';
import { DraftRow } from '../drafts/draft-row.js';
import type { RawRecord } from '../files/table-file.js';
import { unguarded } from './csv-cell.js';
import type { Header, PlacedColumn } from './read-header.js';

const SPREADSHEET_ERROR = /^#(?:N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|GETTING_DATA)$/i;

/** Reads the cells of a row, each by its column; what cannot be read is a problem of that cell, and the others are read all the same. */
export function readRow(fileName: string, file: FileName, header: Header, record: RawRecord): DraftRow {
  const row = new DraftRow(fileName, file, record.line, record.cells, header.given);
  Object.assign(row.values, header.absent);
  for (const placed of header.places) readCell(row, placed, record.cells[placed.place] ?? '');
  const extra =
    record.cells.length > header.cells.length ? record.cells.slice(header.cells.length).find((cell) => cell.trim() !== '') : undefined;
  if (extra !== undefined) row.refuse('TOO_MANY_CELLS', { found: extra });
  return row;
}

function readCell(row: DraftRow, { name, column }: PlacedColumn, cell: string): void {
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
