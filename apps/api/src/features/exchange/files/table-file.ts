import type { Problem, ProblemCode, ProblemParts } from '../problems/problem.js';

/** A file by its name and bytes; `open` may be called again and again, and reads from the beginning each time. */
export interface NamedFile {
  readonly name: string;
  readonly open: () => AsyncIterable<Buffer>;
}

/** One line of a table (or row of a sheet) that is not blank: its cells as they stand in the file, and the line on which it begins. */
export interface RawRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file as rows of cells, whatever its form. `otherName` is a second name by which it may be recognized (the sheet's). */
export interface TableFile {
  readonly name: string;
  readonly otherName?: string;
  /**
   * The records in batches, in constant memory; throws a `FileRefusal` where the file cannot be read as a table.
   *
   * @param knows tells a column's name from other text, so that the separator is chosen by the header it explains best
   */
  readonly records: (knows: (header: string) => boolean) => AsyncGenerator<readonly RawRecord[]>;
}

/** What a folder, an archive or an upload turned out to hold. */
export interface ImportSource {
  readonly tables: readonly TableFile[];
  /** Files, or the whole source, that could not even be opened. */
  readonly refused: readonly Problem[];
}

/** A file that cannot be read as a table. Always caught where the file is read and turned into a problem with its place. */
export class FileRefusal extends Error {
  override readonly name = 'FileRefusal';

  constructor(
    readonly code: ProblemCode,
    readonly parts: ProblemParts & { readonly line?: number } = {},
  ) {
    super(`${code} ${JSON.stringify(parts)}`);
  }
}
