import type { LayoutName } from '../../drafts/laid-out-file.js';
import type { ProblemCode } from '../../problems/problem.js';
import type { DayField, Piece, SettledDay } from './day-values.js';
import type { Heading } from './heading.js';
import type { SourceColumns } from './source-column.js';
import type { StationLine } from './station-line.js';

/** A layout of station files: known by its heading, read line by line, put together day by day. */
export interface StationLayout extends SourceColumns {
  readonly name: LayoutName;
  /** The heading of a file that has none, told by its first line. */
  readonly assumedHeading?: (cells: readonly string[]) => readonly string[] | null;
  /** The height at which the layout's wind is measured, where that is the same for all of them. [m] */
  readonly windHeightM: number | null;
  /** The column of the station, where a file may hold several. */
  readonly stationColumn?: string;
  /** How the lines of a day lie: one alone, next to each other, or anywhere. */
  readonly dayLies: 'alone' | 'together' | 'anywhere';
  /** The values that a file with these columns gives, each with the column it comes from. */
  readonly gives: (heading: Heading) => { readonly [Field in DayField]?: string };
  readonly read: (line: StationLine) => Piece | null;
  readonly settle: (pieces: readonly Piece[]) => SettledDay;
  /** What is to be said once of a file of this layout. */
  readonly notice?: ProblemCode;
}
