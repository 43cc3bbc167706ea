import { readFile, rm, writeFile } from 'node:fs/promises';
import { type FileMeaning, type ImportSource, withMeaning } from '../files/table-file.js';
import { type UploadedFile, uploadedFiles } from '../files/uploaded-files.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import type { ImportReport } from '../import/import-report.js';
import type { UploadFolder } from './upload-folder.js';

/** What is remembered of an upload that was checked: its files and what the check found. */
export interface UploadRecord {
  readonly uploads: readonly UploadedFile[];
  readonly report: ImportReport;
  /** What the person said of files that cannot say it themselves, by their names. */
  readonly meanings: Readonly<Record<string, FileMeaning>>;
}

/** The files of an upload with what was said of them. */
export async function sourceOf({ uploads, meanings }: Omit<UploadRecord, 'report'>): Promise<ImportSource> {
  return withMeaning(await uploadedFiles(uploads), (fileName) => (Object.hasOwn(meanings, fileName) ? meanings[fileName] : undefined));
}

const RECORD = 'record.json';

export function keepRecord(folder: UploadFolder, record: UploadRecord): Promise<void> {
  return writeFile(folder.file(RECORD), JSON.stringify(record), { mode: 0o600 });
}

/** The record of an upload; one whose check has not ended is not there yet. */
export async function recordOf(folder: UploadFolder): Promise<UploadRecord> {
  const text = await readFile(folder.file(RECORD), 'utf8').catch(() => null);
  if (text === null) throw exchangeProblems.noSuchImport({ importId: folder.importId });
  // A record of the version before this one has no meanings.
  return { meanings: {}, ...(JSON.parse(text) as Omit<UploadRecord, 'meanings'>) };
}

/** Removes the files that came in; what was refused of them stays. */
export async function forgetFiles({ uploads }: UploadRecord): Promise<void> {
  for (const upload of uploads) await rm(upload.path, { force: true });
}
