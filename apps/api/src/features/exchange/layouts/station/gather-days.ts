import type { RawRecord, TableFile } from '../../files/table-file.js';
import { type Heading, plainHeading } from './heading.js';
import type { Piece } from './day-values.js';
import type { StationLayout } from './station-layout.js';
import { StationLine } from './station-line.js';

/** How many lines of unfinished days are held at once, beyond a century of one station's elements. */
const MOST_HELD = 400_000;

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
  private readonly days = new Map<string, ReadLine[]>();
  private held = 0;

  constructor(private readonly dayLies: StationLayout['dayLies']) {}

  *push(read: ReadLine): Generator<GatheredDay> {
    const { day } = read.piece;
    if (day === null || this.dayLies === 'alone') {
      yield { day, lines: [read] };
      return;
    }
    if (this.dayLies === 'together' && !this.days.has(day)) yield* this.end();
    const lines = this.days.get(day) ?? [];
    repeated(lines, read);
    lines.push(read);
    this.days.set(day, lines);
    this.held += 1;
    if (this.held > MOST_HELD) yield* this.oldest();
  }

  *end(): Generator<GatheredDay> {
    for (const [day, lines] of this.days) yield { day, lines };
    this.days.clear();
    this.held = 0;
  }

  private *oldest(): Generator<GatheredDay> {
    const next = this.days.entries().next();
    if (next.done) return;
    const [day, lines] = next.value;
    this.days.delete(day);
    this.held -= lines.length;
    yield { day, lines };
  }
}

/** A part of a day comes once. */
function repeated(lines: readonly ReadLine[], { line, piece }: ReadLine): void {
  const before = lines.find((other) => other.piece.part === piece.part);
  if (before)
    line.refuse('DUPLICATE_ROW', null, { found: piece.part, expected: `${piece.day} ${piece.part}`, otherLine: before.line.record.line });
}
