import type { Separator } from './sniff-separator.js';
import type { Problem, ProblemCode, ProblemParts } from '../problems/problem.js';

/** A file by its name and bytes; `open` may be called again and again, and reads from the beginning each time. */
export interface NamedFile {
  readonly name: string;
  readonly open: () => AsyncIterable<Buffer>;
}

/**
 * What whoever brings a file says of it, where the file itself cannot: whose days a station's file holds, whose water a
 * meter's feed counts.
 */
export interface FileMeaning {
  readonly station?: string;
  /** The height of the station's anemometer above the ground. [m] */
  readonly windHeightM?: number;
  readonly property?: string;
  readonly meter?: string;
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
  /** The bytes, where the file is text: it may turn out to be no table. */
  readonly bytes?: () => AsyncIterable<Buffer>;
  readonly meaning?: FileMeaning;
  /**
   * The records in batches, in constant memory; throws a `FileRefusal` where the file cannot be read as a table.
   *
   * @param knows tells a column's name from other text, so that the separator is chosen by the header it explains best
   * @param separator the separator, where it is known already because the header is not the first line
   */
  readonly records: (knows: (header: string) => boolean, separator?: Separator) => AsyncGenerator<readonly RawRecord[]>;
}

/** What a folder, an archive or an upload turned out to hold. */
export interface ImportSource {
  readonly tables: readonly TableFile[];
  /** Files, or the whole source, that could not even be opened. */
  readonly refused: readonly Problem[];
}

/** The same source with what was said of its files. */
export function withMeaning(source: ImportSource, meaningOf: (fileName: string) => FileMeaning | undefined): ImportSource {
  const tables = source.tables.map((table) => {
    const meaning = meaningOf(table.name);
    return meaning ? { ...table, meaning } : table;
  });
  return { ...source, tables };
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
