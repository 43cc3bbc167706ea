import type { Separator } from '../../files/sniff-separator.js';
import { type Problem, problemAt } from '../../problems/problem.js';
import type { SourceUnit } from './source-units.js';
import type { MeasuredColumn, SourceColumns } from './source-column.js';

/** A column of a station's file where it stands. */
interface PlacedSource {
  readonly place: number;
  /** As the file writes it. */
  readonly heading: string;
  /** Null for text. */
  readonly unit: SourceUnit | null;
}

/** The heading of a station's file, understood by a layout. */
export interface Heading {
  /** The line of the heading; 0 where the file has none. */
  readonly line: number;
  readonly cells: readonly string[];
  /** What stands between the cells, where the file is text. */
  readonly separator?: Separator;
  readonly places: ReadonlyMap<string, PlacedSource>;
}

/** A heading and what is wrong or to be noted about it. */
interface UnderstoodHeading {
  readonly heading: Heading;
  readonly problems: readonly Problem[];
  readonly notices: readonly Problem[];
}

const NAME_AND_UNIT = /^([^(]*?)\s*(?:\(([^()]*)\)\s*)?$/;
/** The column of a check's verdict, which follows the column that it judges. */
const FLAG = 'qc';
/** What a file of refused lines carries beside the file's own columns. */
const PROBLEM = 'problem';

/** The name of a column as it is compared: lower case, without its unit. */
export function plainHeading(cell: string): string {
  return namePart(cell).name;
}

function namePart(cell: string): { name: string; unit: string | null } {
  const match = NAME_AND_UNIT.exec(cell.trim().toLowerCase());
  return { name: (match?.[1] ?? cell).trim().replace(/\s+/g, '_'), unit: match?.[2]?.trim() ?? null };
}

/** Reads a line as the heading of a layout; null where it is not one. */
export function understoodHeading(
  fileName: string,
  layout: SourceColumns,
  line: number,
  cells: readonly string[],
): UnderstoodHeading | null {
  const keys = flagged(cells.map((cell) => layout.otherNames?.[plainHeading(cell)] ?? plainHeading(cell)));
  if (!layout.isHeading((column) => keys.includes(column))) return null;
  const at = { file: fileName, line: line || null };
  const places = new Map<string, PlacedSource>();
  const problems: Problem[] = [];
  const notices: Problem[] = [];
  cells.forEach((cell, place) => {
    const key = keys[place] ?? '';
    const heading = cell.trim();
    const column = layout.columns[key];
    if (column === undefined) {
      if (heading !== '' && key !== PROBLEM && !layout.unused.includes(key))
        notices.push(problemAt(at, 'UNKNOWN_COLUMN', { column: heading, found: heading }));
    } else if (places.has(key)) problems.push(problemAt(at, 'DUPLICATE_COLUMN', { column: heading, found: heading }));
    else {
      const unit = column === 'text' ? null : unitOf(column, cell);
      if (unit === undefined) problems.push(wrongUnit(at, column as MeasuredColumn, cell));
      else places.set(key, { place, heading, unit });
    }
  });
  return { heading: { line, cells, places }, problems, notices };
}

/** A column of verdicts takes the name of the column before it. */
function flagged(keys: readonly string[]): readonly string[] {
  return keys.map((key, at) => (key === FLAG ? `${keys[at - 1] ?? ''} ${FLAG}` : key));
}

function unitOf(column: MeasuredColumn, cell: string): SourceUnit | undefined {
  const { unit } = namePart(cell);
  if (unit === null) return column.isUnitWritten ? undefined : column.units[0];
  return column.units.find(({ names }) => names.includes(unit));
}

function wrongUnit(at: { file: string; line: number | null }, column: MeasuredColumn, cell: string): Problem {
  const expected = column.units.map(({ symbol }) => symbol).join(', ');
  return problemAt(at, 'UNIT_NOT_KNOWN', { column: cell.trim(), found: namePart(cell).unit ?? '', expected });
}
