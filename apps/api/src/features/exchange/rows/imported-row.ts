import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { RecognizedFile } from '../drafts/laid-out-file.js';
import type { FileName, ReadValues } from '../columns/import-files.js';
import type { Problem } from '../problems/problem.js';

/*
 * What `readImport` hands on.
 *
 * Files come in the order of `fileNames`, so that whatever a row names was seen before it. A file that is refused, left
 * aside or unknown comes too, without rows, so that the report can name it. Each file's rows come in batches of at most
 * BATCH_ROWS, in the order of the file, but for settings and rates: there the lines of one fact (or rate schedule) come
 * together, in one batch, all accepted or all rejected.
 *
 * `readImport` writes nothing and forgets each batch. The whole folder is checked by running it once and counting; to
 * write, run it again over the same source and names: the verdicts are the same.
 *
 * Values are canonical: SI units (the field's name carries the unit), dates 'yyyy-mm-dd', instants in milliseconds since
 * 1970 UTC, times of day 'hh:mm' (`starts` in minutes after midnight), names composed (NFC) and trimmed, null for a
 * blank cell without a documented default. A column that the file does not have (see `columns` of the file) has the
 * value of a blank cell, and must leave the stored value of an existing thing as it is.
 *
 * `typed` is what belongs in a table's `typed` column: the cells of known columns as they were typed, blank ones left
 * out. With it `writeRows` gives back what came in, as long as the stored value still is what the typed cell says.
 */

/** The most rows in a batch; a single settings fact of more lines than this is a batch of its own. */
export const BATCH_ROWS = 2000;

/** Fields that are found by reference or computed from the row's own cells. */
interface Added {
  readonly settings: { readonly property: string };
  readonly pauses: { readonly property: string };
  readonly readings: { readonly property: string };
  /** `volumeUnit` is the row's unit or else the meter's; `litres` is the volume in L. */
  readonly usage: { readonly property: string; readonly volumeUnit: VolumeUnit; readonly litres: number };
  /** `endOn` is the first day not billed, whatever `end_included` says. */
  readonly bills: { readonly property: string; readonly volumeUnit: VolumeUnit; readonly litres: number; readonly endOn: string };
}

/** The canonical values of a row of each file. A zone's `meter` is null (the property's only one), 'none' (unmetered) or a name. */
export type ImportedValues = {
  readonly [File in FileName]: File extends keyof Added ? Omit<ReadValues[File], keyof Added[File]> & Added[File] : ReadValues[File];
};

/** A row that may be written; `warnings` do not stand in its way. */
export interface AcceptedRow<File extends FileName = FileName> {
  readonly verdict: 'accepted';
  readonly line: number;
  readonly values: ImportedValues[File];
  readonly typed: Readonly<Record<string, string>>;
  readonly warnings: readonly Problem[];
}

/** A row that may not be written, with its cells as they came in, for `rejectedCsv`. */
export interface RejectedRow {
  readonly verdict: 'rejected';
  readonly line: number;
  readonly cells: readonly string[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** Whether it is a further line of the refused row before it, which an hourly file has many of. */
  readonly isBeside?: boolean;
}

/** A row with its verdict. */
export type ImportedRow<File extends FileName = FileName> = AcceptedRow<File> | RejectedRow;

/** A file whose rows can be read. */
export interface ReadFile<File extends FileName = FileName> {
  readonly status: 'read';
  readonly file: File;
  /** The name as the office gave it. */
  readonly name: string;
  /** How the file is understood, where it has a layout of its own. */
  readonly recognized?: RecognizedFile;
  /** The name under which its refused rows are kept. */
  readonly rejectedAs: string;
  /** The header line as it came in, for `rejectedCsv`. */
  readonly header: readonly string[];
  /** The known columns that the file has. */
  readonly columns: ReadonlySet<string>;
  /** What was ignored: unknown columns. */
  readonly notices: readonly Problem[];
  /** How many rows will come, for a progress bar. */
  readonly rowCount: number;
  /** The rows, once: a second call gives none. */
  readonly batches: () => AsyncGenerator<readonly ImportedRow<File>[]>;
}

/** A file that gives no rows: refused as a whole, or left aside because it is not an input. */
export interface UnreadFile {
  readonly status: 'refused' | 'ignored';
  readonly file: FileName | null;
  readonly name: string;
  /** Why. Several where several required columns are missing. */
  readonly problems: readonly Problem[];
  readonly recognized?: RecognizedFile;
}

/** A file of the import; narrow by `status`, then by `file`. */
export type ImportedFile = { readonly [File in FileName]: ReadFile<File> }[FileName] | UnreadFile;
