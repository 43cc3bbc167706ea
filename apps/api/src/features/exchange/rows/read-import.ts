import { type FileName, fileNames, recognizeFile } from '../columns/import-files.js';
import type { ImportSource, TableFile } from '../files/table-file.js';
import type { Known } from '../drafts/known.js';
import { Names } from '../drafts/names.js';
import { type RecognizedTable, recognizeTable } from '../layouts/recognize-table.js';
import { type Problem, problemAt } from '../problems/problem.js';
import type { ImportedFile, ImportedRow } from './imported-row.js';
import { LaidOutContext } from './laid-out-context.js';
import { readLaidOut } from './read-laid-out.js';
import { readBatches, type Survey, survey } from './read-table.js';

const EXPECTED_NAMES = fileNames.map((name) => `${name}.csv`).join(', ');

/**
 * Reads an import: every file with its rows and their verdicts, in constant memory and without writing anything.
 * Files that cannot be used come first, then the others in the order in which they depend on each other.
 *
 * @param source the files of a folder, an archive or an upload
 * @param known what the organization already has
 */
export async function* readImport(source: ImportSource, known: Known): AsyncGenerator<ImportedFile> {
  const names = new Names(known);
  const { tables, laidOut, aside } = await sorted(source);
  const context = new LaidOutContext(names);
  for (const problem of source.refused) yield { status: 'refused', file: null, name: problem.file, problems: [problem] };
  yield* aside;
  if (tables.size === 0 && laidOut.length === 0 && source.refused.length === 0) {
    const problem = problemAt({ file: '*', line: null }, 'NOTHING_TO_IMPORT', { expected: EXPECTED_NAMES });
    yield { status: 'refused', file: null, name: '*', problems: [problem] };
  }
  for (const file of fileNames) {
    const table = tables.get(file);
    if (table) yield* readFile(table, file, names);
    for (const { table: other, recognized } of laidOut) if (recognized.among === file) yield* readLaidOut(other, recognized, context);
  }
}

async function* readFile(table: TableFile, file: FileName, names: Names): AsyncGenerator<ImportedFile> {
  const surveyed = await survey(table, file, names);
  if (!('header' in surveyed)) {
    yield { status: 'refused', file, name: table.name, problems: surveyed };
    return;
  }
  const rows = readBatches(table, file, names, surveyed);
  yield fileOf(table, file, surveyed, rows);
  // The names of these rows are needed by the files after them, whether or not anybody looked at the rows.
  for await (const batch of rows) void batch;
}

function fileOf(table: TableFile, file: FileName, surveyed: Survey, rows: AsyncGenerator<readonly ImportedRow[]>): ImportedFile {
  const { header, rowCount } = surveyed;
  return {
    status: 'read',
    file,
    name: table.name,
    rejectedAs: file,
    header: header.cells,
    columns: header.given,
    notices: header.notices,
    rowCount,
    batches: () => rows,
  } as ImportedFile;
}

interface LaidOut {
  readonly table: TableFile;
  readonly recognized: RecognizedTable;
}

interface Sorted {
  readonly tables: ReadonlyMap<FileName, TableFile>;
  readonly laidOut: readonly LaidOut[];
  readonly aside: readonly ImportedFile[];
}

/** Names that a download may be given although its layout is another. */
const MISNAMED: readonly (FileName | 'output')[] = ['weather', 'usage', 'readings'];

/** A layout of its own shows in the content, whatever the name. */
async function sorted(source: ImportSource): Promise<Sorted> {
  const laidOut: LaidOut[] = [];
  const tables = new Map<FileName, TableFile>();
  const aside: ImportedFile[] = [];
  for (const table of source.tables) {
    const file = recognize(table);
    const recognized = file === null || MISNAMED.includes(file) ? await recognizeTable(table) : null;
    if (recognized) {
      laidOut.push({ table, recognized });
      continue;
    }
    const problem = problemOf(table, file, tables);
    if (problem)
      aside.push({
        status: problem.code === 'DUPLICATE_FILE' ? 'refused' : 'ignored',
        file: file === 'output' ? null : file,
        name: table.name,
        problems: [problem],
      });
    else if (file !== null && file !== 'output') tables.set(file, table);
  }
  return { tables, laidOut, aside };
}

function recognize(table: TableFile): FileName | 'output' | null {
  return recognizeFile(table.name) ?? (table.otherName === undefined ? null : recognizeFile(table.otherName));
}

function problemOf(table: TableFile, file: FileName | 'output' | null, tables: ReadonlyMap<FileName, TableFile>): Problem | null {
  const at = { file: table.name, line: null };
  if (file === null) return problemAt(at, 'UNKNOWN_FILE', { found: table.name, expected: EXPECTED_NAMES });
  if (file === 'output') return problemAt(at, 'OUTPUT_FILE');
  const other = tables.get(file);
  return other ? problemAt(at, 'DUPLICATE_FILE', { found: other.name }) : null;
}
