import { type Column, type Columns, type EpochMs, Fault, sameValue, type WrittenInstant } from '../columns/column.js';
import { type FileName, importFiles } from '../columns/import-files.js';
import { daysAfter, instant, offsetText, wallText } from '../columns/time-cells.js';
import { keyOf } from '../drafts/key-table.js';
import { type Choose, IntervalClock, placed, ReadingClock, theFirst } from '../drafts/place-instants.js';
import { instantsOf, wallOf } from '../drafts/zone-clock.js';
import { csvLine } from './csv-cell.js';
import type { ImportedValues } from './imported-row.js';

/** What a row needs to be written: as imported, without what is computed from other fields. */
interface Writable {
  /** `volume` is in `unit`, or in the meter's where that is null. */
  readonly usage: Omit<ImportedValues['usage'], 'litres' | 'volumeUnit'>;
  readonly bills: Omit<ImportedValues['bills'], 'litres' | 'volumeUnit' | 'end' | 'endIncluded'>;
}

/** The fields that a row of each file is written from. */
export type WritableValues = { readonly [File in FileName]: File extends keyof Writable ? Writable[File] : ImportedValues[File] };

/** A stored row to be written: its values, its cells as they were typed ({} where it was not imported), its property's time zone. */
export interface WritableRow<File extends FileName = FileName> {
  readonly values: WritableValues[File];
  readonly typed: Readonly<Record<string, string>>;
  /** Needed for settings, pauses, readings and usage. IANA name. */
  readonly timeZone?: string;
}

const CHUNK = 65_536;

/**
 * Writes rows as a file of the import folder, header line first, in pieces of text. A cell is written as it was typed
 * while that still says the stored value; else the value is written in the file's unit. What is written reads back as
 * the same values, and is then written the same again, byte for byte, if the rows come in the same order (readings and
 * usage of a meter in order of time).
 */
export async function* writeRows<File extends FileName>(
  file: File,
  rows: AsyncIterable<WritableRow<File>> | Iterable<WritableRow<File>>,
): AsyncGenerator<string> {
  const columns: Columns = importFiles[file];
  const writer = new RowWriter(file, columns);
  let text = csvLine(Object.keys(columns));
  for await (const row of rows) {
    text += csvLine(writer.cells(row as unknown as AnyRow));
    if (text.length < CHUNK) continue;
    yield text;
    text = '';
  }
  if (text !== '') yield text;
}

interface AnyRow {
  readonly values: Readonly<Record<string, unknown>>;
  readonly typed: Readonly<Record<string, string>>;
  readonly timeZone?: string;
}

/** Writes the cells of rows, and follows the clocks as a reader of the file would. */
class RowWriter {
  private readonly reading = new ReadingClock();
  private readonly interval = new IntervalClock();

  constructor(
    private readonly file: FileName,
    private readonly columns: Columns,
  ) {}

  cells(row: AnyRow): readonly string[] {
    const values = this.file === 'bills' ? billValues(row) : row.values;
    const cells = Object.entries(this.columns).map(([name, column]) => {
      const value = values[column.field] ?? null;
      if (column.cell === instant && value !== null) return this.instantCell(row, name, column, value as EpochMs);
      return cellText(column, row.typed[name], value);
    });
    this.advance(row);
    return cells;
  }

  private instantCell(row: AnyRow, name: string, column: Column, value: EpochMs): string {
    const zone = row.timeZone;
    if (zone === undefined) throw new TypeError(`A row of ${this.file} needs its time zone to be written.`);
    const typed = row.typed[name];
    const read = typed === undefined ? null : column.cell.read(typed.trim());
    const choose = this.chooser(row, column.field);
    if (typed !== undefined && read !== null && !(read instanceof Fault) && placed(read as WrittenInstant, zone, choose) === value)
      return typed;
    return instantText(value, zone);
  }

  private chooser(row: AnyRow, field: string): Choose {
    const meter = meterKey(row);
    if (field === 'readAt') return this.reading.chooseFor(meter);
    if (field === 'start') return this.interval.chooseStart(meter);
    if (field === 'end') return this.interval.chooseEnd(row.values['start'] as EpochMs);
    if (field === 'pausedUntil') return this.interval.chooseEnd(row.values['pausedFrom'] as EpochMs);
    return theFirst;
  }

  private advance(row: AnyRow): void {
    if (this.file === 'readings') this.reading.advance(meterKey(row), row.values['readAt'] as EpochMs);
    if (this.file === 'usage') this.interval.advance(meterKey(row), row.values['end'] as EpochMs);
  }
}

function meterKey(row: AnyRow): string {
  return keyOf(String(row.values['property']), String(row.values['meter']));
}

function cellText(column: Column, typed: string | undefined, value: unknown): string {
  const read = typed === undefined ? column.blank : column.cell.read(typed.trim());
  if (!(read instanceof Fault) && sameValue(read, value)) return typed ?? '';
  return value === null ? '' : column.cell.write(value as never);
}

/** Local time, with its offset from UTC only where the clocks show that time twice. */
function instantText(value: EpochMs, zone: string): string {
  const { wallMs, offsetMs } = wallOf(zone, value);
  const twice = instantsOf(zone, wallMs).length !== 1;
  return wallText(wallMs) + (twice ? offsetText(offsetMs / 60_000) : '');
}

/** A bill keeps the way in which its end was typed: the last day billed, or the first that is not. */
function billValues(row: AnyRow): Readonly<Record<string, unknown>> {
  const endOn = String(row.values['endOn']);
  const typed = row.typed['end_included'];
  const endIncluded = typed !== undefined && importFiles.bills.end_included.cell.read(typed.trim()) === true;
  return { ...row.values, endIncluded, end: endIncluded ? daysAfter(endOn, -1) : endOn };
}
