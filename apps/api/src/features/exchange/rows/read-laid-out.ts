import { fileChecks } from '../checks/checks-of-files.js';
import type { DraftRow } from '../drafts/draft-row.js';
import type { LaidOutFile, LaidOutRows, RecognizedFile } from '../drafts/laid-out-file.js';
import type { TableFile } from '../files/table-file.js';
import type { RecognizedTable } from '../layouts/recognize-table.js';
import type { Problem } from '../problems/problem.js';
import { BATCH_ROWS, type ImportedFile, type ImportedRow } from './imported-row.js';
import type { LaidOutContext } from './laid-out-context.js';
import { refusals, verdict } from './read-table.js';

/** Reads a file of a recognized layout as the files of the import are read: whole or not at all, each row with its verdict. */
export async function* readLaidOut(table: TableFile, recognized: RecognizedTable, context: LaidOutContext): AsyncGenerator<ImportedFile> {
  const laidOut = await read(table, () => recognized.read(context.names));
  if (!('recognized' in laidOut)) {
    yield { status: 'refused', file: recognized.among, name: table.name, problems: laidOut };
    return;
  }
  const { refused, parts } = laidOut;
  if (refused.length > 0)
    yield { status: 'refused', file: recognized.among, name: table.name, problems: refused, recognized: laidOut.recognized };
  for (const part of parts) {
    const batches = batchesOf(part, context);
    yield fileOf(table.name, part, laidOut.recognized, context.nextPlace(part.file), batches);
    // The days of these rows are told to the files after them, whether or not anybody looked at the rows.
    for await (const batch of batches) void batch;
  }
}

async function read(table: TableFile, work: () => Promise<LaidOutFile>): Promise<LaidOutFile | readonly Problem[]> {
  try {
    return await work();
  } catch (error) {
    return refusals(table.name, error);
  }
}

function fileOf(
  name: string,
  { file, header, columns, notices, rowCount }: LaidOutRows,
  recognized: RecognizedFile,
  rejectedAs: string,
  batches: AsyncGenerator<readonly ImportedRow[]>,
): ImportedFile {
  return { status: 'read', file, name, recognized, rejectedAs, header, columns, notices, rowCount, batches: () => batches } as ImportedFile;
}

async function* batchesOf({ file, rows }: LaidOutRows, context: LaidOutContext): AsyncGenerator<readonly ImportedRow[]> {
  const check = fileChecks[file](context.names);
  let batch: ImportedRow[] = [];
  for await (const row of rows()) {
    check(row);
    if (file === 'weather') context.noteDay(row);
    if (batch.length >= BATCH_ROWS) yield batch.splice(0);
    batch.push(...verdicts(row));
  }
  if (batch.length > 0) yield batch;
}

/** A refused day is given back with all of its lines, each with its own problems: half of a day cannot be mended. */
function verdicts(row: DraftRow): readonly ImportedRow[] {
  if (!row.rejected || row.lines.length < 2) return [verdict(row)];
  return row.lines.map(({ line, cells }, at) => {
    const problems = row.problems.filter((problem) => problem.line === line);
    return { verdict: 'rejected', line, cells, problems, warnings: at === 0 ? row.warnings : [], isBeside: at > 0 };
  });
}
