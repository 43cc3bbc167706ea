import { readFile, rm, writeFile } from 'node:fs/promises';
import type { UploadedFile } from '../files/uploaded-files.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import type { ImportReport } from '../import/import-report.js';
import type { UploadFolder } from './upload-folder.js';

/** What is remembered of an upload that was checked: its files and what the check found. */
export interface UploadRecord {
  readonly uploads: readonly UploadedFile[];
  readonly report: ImportReport;
}

const RECORD = 'record.json';

export function keepRecord(folder: UploadFolder, record: UploadRecord): Promise<void> {
  return writeFile(folder.file(RECORD), JSON.stringify(record), { mode: 0o600 });
}

/** The record of an upload; one whose check has not ended is not there yet. */
export async function recordOf(folder: UploadFolder): Promise<UploadRecord> {
  const text = await readFile(folder.file(RECORD), 'utf8').catch(() => null);
  if (text === null) throw exchangeProblems.noSuchImport({ importId: folder.importId });
  return JSON.parse(text) as UploadRecord;
}

/** Removes the files that came in; what was refused of them stays. */
export async function forgetFiles({ uploads }: UploadRecord): Promise<void> {
  for (const upload of uploads) await rm(upload.path, { force: true });
}
