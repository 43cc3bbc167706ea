import type { FileName } from '../../columns/import-files.js';
import type { WritableRow } from '../../rows/write-rows.js';

/** A row as the database answers: columns named as the file's fields, and beside them the typed cells and the time zone. */
export type Answer = Readonly<Record<string, unknown>>;

/** What is asked for a file: one statement, in the order in which its rows are written; $1 is the organization. */
export interface Question<File extends FileName> {
  readonly sql: string;
  /** how many rows of the answer are held at once */
  readonly atOnce: number;
  readonly rows: (answer: Answer) => readonly WritableRow<File>[];
}

const AT_ONCE = 2000;

/** A question whose answers are the file's rows. */
export function rowByRow<File extends FileName>(sql: string): Question<File> {
  return { sql, atOnce: AT_ONCE, rows: (answer) => [rowOf<File>(answer)] };
}

function rowOf<File extends FileName>({ typed, timeZone, ...values }: Answer): WritableRow<File> {
  const kept = timeZone === undefined ? values : { ...values, timeZone };
  return {
    values: Object.fromEntries(Object.entries(kept).map(([field, value]) => [field, plain(value)])) as never,
    typed: typed as Record<string, string>,
    ...(typeof timeZone === 'string' && { timeZone }),
  };
}

/** Instants are milliseconds in rows of files. */
function plain(value: unknown): unknown {
  return value instanceof Date ? value.getTime() : value;
}
