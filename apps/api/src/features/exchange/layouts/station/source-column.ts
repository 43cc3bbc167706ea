import type { Bounds, SourceUnit } from './source-units.js';

/** A column of numbers in one of some units; the first is meant where the heading names none, unless it must. */
export interface MeasuredColumn {
  readonly bounds: Bounds;
  readonly units: readonly SourceUnit[];
  readonly isUnitWritten?: boolean;
}

/** The columns of a layout, and by which of them its heading is known. */
export interface SourceColumns {
  /** The columns that are read, by their headings in lower case: numbers, or text. */
  readonly columns: Readonly<Record<string, MeasuredColumn | 'text'>>;
  /** Other headings under which a column of the layout is known. */
  readonly otherNames?: Readonly<Record<string, string>>;
  /** Columns that the layout has and that are of no use here. */
  readonly unused: readonly string[];
  readonly isHeading: (has: (column: string) => boolean) => boolean;
  /** Numbers and words (in lower case) that mean a missing value. */
  readonly missing: readonly (number | string)[];
}
