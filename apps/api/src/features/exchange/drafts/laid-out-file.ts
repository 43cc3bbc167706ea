import type { Problem } from '../problems/problem.js';
import type { DraftRow } from './draft-row.js';

/** The layouts other than those of the import folder that are known by their content. */
export type LayoutName = 'hourly-flagged' | 'coded-daily' | 'coded-hourly' | 'daymet' | 'gridmet' | 'ghcn-daily' | 'prism' | 'espi';

/** A file of such a layout, and how it is understood: what was said of it, or what it says itself. */
export interface RecognizedFile {
  readonly layout: LayoutName;
  /** Whose file it is must be known before a row is read. */
  readonly belongsTo: 'station' | 'meter';
  readonly station: string | null;
  /** Whether the file gives wind of a height that its layout does not tell: it must then be stated. */
  readonly asksWindHeight: boolean;
  readonly windHeightM: number | null;
  readonly property: string | null;
  readonly meter: string | null;
}

/** Rows of one kind that such a file gives, on their way to the same checks as those of the import folder. */
export interface LaidOutRows {
  readonly file: 'weather' | 'usage' | 'readings';
  /** The header line under which refused lines are given back. */
  readonly header: readonly string[];
  /** The columns of the import that the file fills. */
  readonly columns: ReadonlySet<string>;
  readonly notices: readonly Problem[];
  readonly rowCount: number;
  readonly rows: () => AsyncGenerator<DraftRow>;
}

/** What such a file holds, or why it is refused. */
export interface LaidOutFile {
  readonly recognized: RecognizedFile;
  readonly refused: readonly Problem[];
  readonly parts: readonly LaidOutRows[];
}
