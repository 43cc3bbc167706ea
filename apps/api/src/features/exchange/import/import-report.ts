import type { FileName } from '../columns/import-files.js';
import type { RecognizedFile } from '../drafts/laid-out-file.js';
import type { Problem } from '../problems/problem.js';
import type { RejectedRow } from '../rows/imported-row.js';

/** What became of one file of an import. */
export interface FileReport {
  /** the name as the office gave it */
  readonly name: string;
  readonly file: FileName | null;
  /** how the file is understood, where it has a layout of its own */
  readonly recognized?: RecognizedFile;
  /** the name under which its refused rows are kept; null where it gives none */
  readonly rejectedAs: string | null;
  readonly status: 'read' | 'refused';
  readonly new: number;
  readonly changed: number;
  readonly same: number;
  /** rows that are refused */
  readonly wrong: number;
  /** what does not stand in the way: warnings and ignored columns, the first of them */
  readonly notices: readonly Problem[];
  readonly noticesTotal: number;
  /** what is wrong, the first of it */
  readonly problems: readonly Problem[];
  readonly problemsTotal: number;
}

/** What became of an import. */
export interface ImportReport {
  readonly files: readonly FileReport[];
  /** files that are none of the import and were left aside, each with why */
  readonly ignored: readonly Problem[];
  readonly problemsTotal: number;
  /** rows read, good and wrong */
  readonly rows: number;
  /** whether the good rows are stored now */
  readonly written: boolean;
}

/** Who follows an import while it runs. */
export interface ImportListener {
  /** how far a file is */
  progress?(file: FileName, done: number, total: number): Promise<void> | void;
  /** a file or row that is refused, as it is met */
  problem?(problem: Problem): void;
  /** rows that are refused, with the file's header line: for mending */
  rejected?(rejectedAs: string, header: readonly string[], rows: readonly RejectedRow[]): Promise<void>;
}
