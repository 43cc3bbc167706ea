import type { RawRecord, TableFile } from '../../files/table-file.js';
import { type Heading, plainHeading } from './heading.js';
import type { Piece } from './day-values.js';
import type { StationLayout } from './station-layout.js';
import { StationLine } from './station-line.js';

/** How many lines of unfinished days are held at once, beyond a century of one station's elements. */
const MOST_HELD = 400_000;
/** More lines than a day can have hours or elements: what comes after them is another day of the same date, and refused. */
const MOST_LINES = 100;

/** How a station's file is read. */
export interface StationReading {
  readonly table: TableFile;
  readonly layout: StationLayout;
  readonly heading: Heading;
  /** The station, as the file writes it, whose lines alone are read; null where all of them are. */
  readonly only: string | null;
  readonly elevationM: number | null;
}

/** The lines of a day, or one whose day could not be read. */
export interface GatheredDay {
  readonly day: string | null;
  readonly lines: readonly ReadLine[];
}

/** A line and what it gives. */
export interface ReadLine {
  readonly line: StationLine;
  readonly piece: Piece;
}

/** The records of a file's table, with the separator that its heading is read by. */
export async function* recordsOf({ table, heading }: Pick<StationReading, 'table' | 'heading'>): AsyncGenerator<RawRecord> {
  const known = new Set(heading.cells.map(plainHeading));
  for await (const records of table.records((cell) => known.has(plainHeading(cell)), heading.separator)) {
    for (const record of records) if (record.line > heading.line) yield record;
  }
}

/** The days of a station's file, each with its lines, in the order in which the file finishes them. */
export async function* gatheredDays(reading: StationReading): AsyncGenerator<GatheredDay> {
  const { layout, heading, only } = reading;
  const open = new OpenDays(layout.dayLies);
  for await (const record of recordsOf(reading)) {
    const line = new StationLine(record, heading, layout, reading.elevationM);
    if (only !== null && line.text(layout.stationColumn ?? '') !== only) continue;
    const piece = layout.read(line);
    if (piece) yield* open.push({ line, piece });
  }
  yield* open.end();
}

/** Days whose lines may still come. */
class OpenDays {
  private readonly days = new Map<string, OpenDay>();
  private held = 0;

  constructor(private readonly dayLies: StationLayout['dayLies']) {}

  *push(read: ReadLine): Generator<GatheredDay> {
    const { day } = read.piece;
    if (day === null || this.dayLies === 'alone') {
      yield { day, lines: [read] };
      return;
    }
    if (this.dayLies === 'together' && !this.days.has(day)) yield* this.end();
    const open = this.days.get(day) ?? { lines: [], parts: new Map<string, number>() };
    repeated(open, read);
    open.lines.push(read);
    this.days.set(day, open);
    this.held += 1;
    if (open.lines.length >= MOST_LINES) yield this.close(day, open);
    else if (this.held > MOST_HELD) yield* this.oldest();
  }

  *end(): Generator<GatheredDay> {
    for (const [day, { lines }] of this.days) yield { day, lines };
    this.days.clear();
    this.held = 0;
  }

  private close(day: string, { lines }: OpenDay): GatheredDay {
    this.days.delete(day);
    this.held -= lines.length;
    return { day, lines };
  }

  private *oldest(): Generator<GatheredDay> {
    const next = this.days.entries().next();
    if (next.done) return;
    yield this.close(...next.value);
  }
}

/** A day that is not finished, and the line of each of its parts. */
interface OpenDay {
  readonly lines: ReadLine[];
  readonly parts: Map<string, number>;
}

/** A part of a day comes once. */
function repeated({ parts }: OpenDay, { line, piece }: ReadLine): void {
  const otherLine = parts.get(piece.part);
  if (otherLine === undefined) parts.set(piece.part, line.record.line);
  else line.refuse('DUPLICATE_ROW', null, { found: piece.part, expected: `${piece.day} ${piece.part}`, otherLine });
}
