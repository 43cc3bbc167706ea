import { Fault } from '../../columns/column.js';
import { readNumber } from '../../columns/number-cells.js';
import type { RawRecord } from '../../files/table-file.js';
import type { ProblemCode, ProblemParts } from '../../problems/problem.js';
import type { Heading } from './heading.js';
import type { SourceColumns } from './source-column.js';
import type { Bounds, SourceUnit } from './source-units.js';
import type { DayNote } from './day-values.js';

/** Machines write what people do not: an exponent, a zero below zero. */
const MACHINE_NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?$/i;

/** No number of a weather file is larger in any unit; what is need not be converted. */
const FARTHEST = 1e9;

/** One line of a station's file while it is read: its cells by the layout's columns, and what is wrong with them. */
export class StationLine {
  readonly faults: DayNote[] = [];
  readonly notes: DayNote[] = [];

  /**
   * @param elevationM the station's height above the sea, null where it is not known [m]
   */
  constructor(
    readonly record: RawRecord,
    private readonly heading: Heading,
    private readonly layout: SourceColumns,
    readonly elevationM: number | null,
  ) {
    const extra = record.cells.slice(heading.cells.length).find((cell) => cell.trim() !== '');
    if (extra !== undefined) this.refuse('TOO_MANY_CELLS', null, { found: extra });
  }

  /** The text of a column; '' where it is blank or the file has no such column. */
  text(column: string): string {
    const place = this.heading.places.get(column);
    return place ? (this.record.cells[place.place] ?? '').trim() : '';
  }

  has(column: string): boolean {
    return this.heading.places.has(column);
  }

  /** The number of a column in the unit in which it is kept; null where it is missing or cannot be read, which is then a fault. */
  number(column: string): number | null {
    return this.numberAs(column, column);
  }

  /** The same for a column whose unit is that of another one of the layout, told by a third. */
  numberAs(column: string, like: string): number | null {
    const spec = this.layout.columns[like];
    const text = this.text(column);
    if (spec === undefined || spec === 'text' || this.isMissing(text)) return null;
    const unit = (like === column ? this.heading.places.get(column)?.unit : null) ?? spec.units[0];
    const value = unit ? read(text, spec.bounds, unit) : new Fault('NOT_A_NUMBER');
    if (value instanceof Fault) {
      this.refuse(value.code, column, { found: text, expected: value.expected });
      return null;
    }
    return value;
  }

  refuse(code: ProblemCode, column: string | null, parts: ProblemParts): void {
    this.faults.push({ code, parts: { ...parts, column: this.headingOf(column) } });
  }

  note(code: ProblemCode, column: string, parts: ProblemParts = {}): void {
    this.notes.push({ code, parts: { found: this.text(column), ...parts, column: this.headingOf(column) } });
  }

  private headingOf(column: string | null): string | null {
    return column === null ? null : (this.heading.places.get(column)?.heading ?? column);
  }

  private isMissing(text: string): boolean {
    if (text === '') return true;
    const number = Number(text);
    return this.layout.missing.some((mark) => (typeof mark === 'number' ? mark === number : mark === text.toLowerCase()));
  }
}

function read(text: string, bounds: Bounds, unit: SourceUnit): number | Fault {
  if (!MACHINE_NUMBER.test(text)) {
    const number = readNumber(text, unit.symbol);
    return number instanceof Fault ? number : new Fault('NOT_A_NUMBER', unit.symbol);
  }
  if (Math.abs(Number(text)) > FARTHEST) return new Fault('OUT_OF_RANGE', writtenRange(bounds, unit));
  // Adding zero leaves no negative zero.
  const kept = unit.toKept(Number(text)) + 0;
  return kept >= bounds.min && kept <= bounds.max ? kept : new Fault('OUT_OF_RANGE', writtenRange(bounds, unit));
}

/** The bounds in the unit of the file, which is a line through the unit in which the value is kept. */
function writtenRange({ min, max }: Bounds, { symbol, toKept }: SourceUnit): string {
  const offset = toKept(0);
  const slope = toKept(1) - offset;
  const text = (kept: number): string => String(Number(((kept - offset) / slope).toPrecision(4)));
  return `≥ ${text(min)}, ≤ ${text(max)} ${symbol}`.trim();
}
