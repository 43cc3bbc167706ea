import { LONGEST_ROW, MOST_COLUMNS } from './csv-scanner.js';
import { FileRefusal, type RawRecord, type TableFile } from './table-file.js';
import { type DateSystem, dateText, type NumberForm, numberText } from './xlsx-cell.js';
import { numberForms, openWorkbook, RunText, sharedStrings, unescaped, type Workbook } from './xlsx-workbook.js';
import { XmlEvents, type XmlReader } from './xml-events.js';
import { type ArchivedFile, zipArchive } from './zip-archive.js';

/** The first sheet of a workbook as a table; dates become ISO 8601 text, errors their spreadsheet words. */
export async function xlsxTable(name: string, path: string): Promise<TableFile> {
  const parts = await archive(path);
  const workbook = await openWorkbook(parts);
  return { name, otherName: workbook.sheetName, records: () => sheetRecords(parts, workbook) };
}

async function archive(path: string): Promise<readonly ArchivedFile[]> {
  try {
    return await zipArchive(path);
  } catch (error) {
    if (error instanceof FileRefusal && error.code === 'ZIP_DAMAGED') throw new FileRefusal('XLSX_DAMAGED', error.parts);
    throw error;
  }
}

async function* sheetRecords(parts: readonly ArchivedFile[], workbook: Workbook): AsyncGenerator<readonly RawRecord[]> {
  const reader = new SheetReader(await sharedStrings(parts), await numberForms(parts), workbook.dateSystem);
  const events = new XmlEvents(reader);
  for await (const chunk of workbook.sheet.open()) {
    events.push(chunk);
    const rows = reader.take();
    if (rows.length > 0) yield rows;
  }
  events.end();
  yield reader.take();
}

const CELL_PLACE = /^([A-Z]{1,3})([1-9]\d{0,6})$/;

/** Gathers the cells of a sheet row by row as the XML goes by. */
class SheetReader implements XmlReader {
  private ready: RawRecord[] = [];
  private row = 0;
  private cells: string[] = [];
  private rowLength = 0;
  private column = -1;
  private kind = 'n';
  private style = 0;
  private value = '';
  private inValue = false;
  private hasFormula = false;
  private readonly run = new RunText();

  constructor(
    private readonly strings: readonly string[],
    private readonly forms: readonly NumberForm[],
    private readonly dateSystem: DateSystem,
  ) {}

  take(): readonly RawRecord[] {
    const rows = this.ready;
    this.ready = [];
    return rows;
  }

  opened(name: string, attributes: Readonly<Record<string, string>>): void {
    this.run.opened(name);
    if (name === 'row') this.beginRow(attributes['r']);
    else if (name === 'c') this.beginCell(attributes);
    else if (name === 'v') this.inValue = true;
    else if (name === 'f') this.hasFormula = true;
  }

  text(piece: string): void {
    const counts = this.inValue || (this.kind === 'inlineStr' && this.run.counts);
    if (!counts) return;
    this.value += piece;
    if (this.value.length > LONGEST_ROW) throw new FileRefusal('LINE_TOO_LONG', { line: this.row, expected: String(LONGEST_ROW) });
  }

  closed(name: string): void {
    this.run.closed(name);
    if (name === 'v') this.inValue = false;
    else if (name === 'c') this.endCell();
    else if (name === 'row' && this.cells.some((cell) => cell.trim() !== '')) this.ready.push({ line: this.row, cells: this.cells });
  }

  private beginRow(place: string | undefined): void {
    const row = place === undefined ? this.row + 1 : Number(place);
    if (!Number.isInteger(row) || row <= this.row) throw new FileRefusal('XLSX_DAMAGED', { found: `row ${place}`, line: this.row });
    this.row = row;
    this.cells = [];
    this.rowLength = 0;
    this.column = -1;
  }

  private beginCell(attributes: Readonly<Record<string, string>>): void {
    const place = attributes['r'];
    const column = place === undefined ? this.column + 1 : columnOf(place);
    if (column <= this.column) throw new FileRefusal('XLSX_DAMAGED', { found: `cell ${place}`, line: this.row });
    this.column = column;
    this.kind = attributes['t'] ?? 'n';
    this.style = Number(attributes['s'] ?? 0);
    this.value = '';
    this.hasFormula = false;
  }

  private endCell(): void {
    const text = this.cellText();
    if (text === '') return;
    if (this.column >= MOST_COLUMNS) throw new FileRefusal('TOO_MANY_COLUMNS', { line: this.row, expected: String(MOST_COLUMNS) });
    this.rowLength += text.length;
    if (this.rowLength > LONGEST_ROW) throw new FileRefusal('LINE_TOO_LONG', { line: this.row, expected: String(LONGEST_ROW) });
    while (this.cells.length < this.column) this.cells.push('');
    this.cells.push(text);
  }

  private cellText(): string {
    // A formula that was never computed has no value: an unknown value is an error, not a blank.
    if (this.value === '' && this.hasFormula && this.kind !== 'str') return '#CALC!';
    if (this.kind === 's') return this.shared();
    if (this.kind === 'b') return this.value === '1' ? 'yes' : 'no';
    if (this.kind === 'str' || this.kind === 'inlineStr') return checkedText(unescaped(this.value), this.row);
    if (this.kind === 'n') return this.number();
    return this.value.trim();
  }

  private shared(): string {
    if (this.value === '') return '';
    const text = /^\d+$/.test(this.value.trim()) ? this.strings[Number(this.value)] : undefined;
    if (text === undefined) throw new FileRefusal('XLSX_STRING_INDEX', { line: this.row, found: this.value });
    return checkedText(text, this.row);
  }

  private number(): string {
    const written = this.value.trim();
    if (written === '') return '';
    const value = Number(written);
    if (!Number.isFinite(value) || !/^[-+]?[\d.]+(?:e[-+]?\d+)?$/i.test(written)) return written;
    return this.forms[this.style] === 'date' ? dateText(value, this.dateSystem) : numberText(value);
  }
}

function columnOf(place: string): number {
  const letters = CELL_PLACE.exec(place)?.[1];
  if (letters === undefined) throw new FileRefusal('XLSX_DAMAGED', { found: `cell ${place}` });
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}

function checkedText(text: string, line: number): string {
  if (text.includes('\0')) throw new FileRefusal('NUL_BYTE', { line });
  return text;
}
