import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../../platform/records/merge-counts.js';
import type { FileName } from '../../columns/import-files.js';
import type { Problem } from '../../problems/problem.js';
import type { AcceptedRow } from '../../rows/imported-row.js';
import type { Directory } from './directory.js';
import type { Touched } from './touched.js';

/** Where an import writes, and what it has met so far. */
export interface ImportTarget {
  readonly tx: OrganizationTransaction;
  readonly directory: Directory;
  readonly touched: Touched;
}

/** Accepted rows of one file, and the columns that the file has. */
export interface FileBatch<File extends FileName> {
  /** the file as the office named it */
  readonly name: string;
  readonly columns: ReadonlySet<string>;
  readonly rows: readonly AcceptedRow<File>[];
}

/** A row that only the database could tell to be wrong. */
export interface Refused<File extends FileName> {
  readonly row: AcceptedRow<File>;
  readonly problem: Problem;
}

/** What became of the rows of a batch. */
export interface FileMerged<File extends FileName = FileName> extends MergeCounts {
  readonly refused?: readonly Refused<File>[];
}

/** Merges the rows of one file: the same rows again change nothing. */
export type FileMerge<File extends FileName> = (to: ImportTarget, batch: FileBatch<File>) => Promise<FileMerged<File>>;
