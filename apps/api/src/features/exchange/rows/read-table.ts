import { fileChecks, groupChecks } from '../checks/checks-of-files.js';
import type { FileCheck } from '../checks/file-check.js';
import { columnsByKey, type FileName, importFiles, plainKey } from '../columns/import-files.js';
import type { DraftRow } from '../drafts/draft-row.js';
import { KeyTable } from '../drafts/key-table.js';
import { FileRefusal, type RawRecord, type TableFile } from '../files/table-file.js';
import type { Names } from '../drafts/names.js';
import { type Problem, problemAt } from '../problems/problem.js';
import { HeldGroups } from './held-groups.js';
import { BATCH_ROWS, type ImportedRow } from './imported-row.js';
import { type Header, readHeader } from './read-header.js';
import { readRow } from './read-row.js';

/** What a first look at a whole file found: it can be read to its end, how many rows it has, which of them belong together. */
export interface Survey {
  readonly header: Header;
  readonly rowCount: number;
  readonly groupSizes: KeyTable;
}

/**
 * Reads a file to its end without keeping anything, so that one that breaks off in the middle gives no rows at all.
 * Returns the problems where the file must be refused.
 */
export async function survey(table: TableFile, file: FileName, names: Names): Promise<Survey | readonly Problem[]> {
  const groups = groupChecks[file] && new GroupCount(table.name, file, fileChecks[file](names));
  let header: Header | null = null;
  let rowCount = 0;
  try {
    for await (const { head, rows } of tableRows(table, file)) {
      header = head;
      rowCount += rows.length;
      groups?.count(head, rows);
    }
  } catch (error) {
    return refusals(table.name, error);
  }
  if (header) return { header, rowCount, groupSizes: groups?.sizes ?? new KeyTable() };
  return [problemAt({ file: table.name, line: 1 }, 'HEADER_MISSING', { expected: Object.keys(importFiles[file]).join(', ') })];
}

/** Counts how many lines each group has in the whole file. */
class GroupCount {
  readonly sizes = new KeyTable();

  constructor(
    private readonly fileName: string,
    private readonly file: FileName,
    private readonly check: FileCheck,
  ) {}

  count(head: Header, records: readonly RawRecord[]): void {
    for (const record of records) {
      const row = readRow(this.fileName, this.file, head, record);
      this.check(row);
      if (row.group !== null) this.sizes.set(row.group, this.sizes.get(row.group) + 1);
    }
  }
}

/**
 * The rows of a surveyed file with their verdicts, in batches.
 *
 * @throws FileRefusal `FILE_CHANGED` where the file is no longer the one that was surveyed: whoever writes must undo
 */
export async function* readBatches(
  table: TableFile,
  file: FileName,
  names: Names,
  surveyed: Survey,
): AsyncGenerator<readonly ImportedRow[]> {
  const check = fileChecks[file](names);
  const groupCheck = groupChecks[file]?.(names);
  const groups = groupCheck && new HeldGroups(surveyed.groupSizes, groupCheck);
  let count = 0;
  let batch: ImportedRow[] = [];
  for await (const { head, rows } of tableRows(table, file)) {
    count += rows.length;
    for (const record of rows) {
      const row = readRow(table.name, file, head, record);
      check(row);
      const ready = groups ? groups.push(row) : [row];
      if (isFull(batch, ready)) yield batch.splice(0);
      for (const one of ready) batch.push(verdict(one));
    }
  }
  if (batch.length > 0) yield batch;
  if (count !== surveyed.rowCount) throw new FileRefusal('FILE_CHANGED', { found: String(count), expected: String(surveyed.rowCount) });
}

/** Whether lines that belong together must go into the next batch. */
function isFull(batch: readonly ImportedRow[], ready: readonly DraftRow[]): boolean {
  return batch.length > 0 && batch.length + ready.length > BATCH_ROWS;
}

/** A row with what became of it. */
export function verdict(row: DraftRow): ImportedRow {
  const { line, typed, cells, problems, warnings } = row;
  if (row.rejected) return { verdict: 'rejected', line, cells, problems, warnings };
  return { verdict: 'accepted', line, values: row.values as never, typed, warnings };
}

/** The records of a table after its header line, with the header beside them. */
async function* tableRows(table: TableFile, file: FileName): AsyncGenerator<{ head: Header; rows: readonly RawRecord[] }> {
  const known = columnsByKey(file);
  let head: Header | null = null;
  for await (const records of table.records((header) => known.has(plainKey(header)))) {
    const [first] = records;
    if (!first) continue;
    if (head) yield { head, rows: records };
    else {
      head = headerOf(table.name, file, first);
      yield { head, rows: records.slice(1) };
    }
  }
}

/** Carries the problems of a header line out of the reading. */
class HeaderRefusal extends Error {
  override readonly name = 'HeaderRefusal';

  constructor(readonly problems: readonly Problem[]) {
    super('HEADER_REFUSED');
  }
}

function headerOf(fileName: string, file: FileName, record: RawRecord): Header {
  const header = readHeader(fileName, file, record.line, record.cells);
  if ('places' in header) return header;
  throw new HeaderRefusal(header);
}

/** Why a file must be refused, from what was thrown while it was read; anything else is thrown on. */
export function refusals(fileName: string, error: unknown): readonly Problem[] {
  if (error instanceof HeaderRefusal) return error.problems;
  if (error instanceof FileRefusal) return [problemAt({ file: fileName, line: error.parts.line ?? null }, error.code, error.parts)];
  if (error instanceof Error && 'code' in error)
    return [problemAt({ file: fileName, line: null }, 'FILE_NOT_READABLE', { found: String(error.code) })];
  throw error;
}
