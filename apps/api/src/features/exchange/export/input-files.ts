import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type FileName, fileNames } from '../columns/import-files.js';
import { type WritableRow, writeRows } from '../rows/write-rows.js';
import { type Cursor, openCursor } from './cursor.repository.js';
import type { ExportedFile } from './exported-file.js';
import { factQuestions } from './questions/facts.repository.js';
import { portfolioQuestions } from './questions/portfolio.repository.js';
import type { Answer, Question } from './questions/question.js';

const questions: { readonly [File in FileName]: Question<File> } = { ...portfolioQuestions, ...factQuestions };

/** The files of the import folder that have rows, as all of them stand at one moment. */
export async function inputFiles(tx: OrganizationTransaction): Promise<AsyncGenerator<ExportedFile>> {
  const cursors: (readonly [FileName, Cursor<Answer>])[] = [];
  for (const file of fileNames) cursors.push([file, await openCursor<Answer>(tx, `export_${file}`, questions[file].sql)]);
  return filesOf(cursors);
}

async function* filesOf(cursors: readonly (readonly [FileName, Cursor<Answer>])[]): AsyncGenerator<ExportedFile> {
  for (const [file, cursor] of cursors) {
    const rows = rowsOf(file, cursor);
    const first = await rows.next();
    if (!first.done) yield { name: `${file}.csv`, text: writeRows(file, from(first.value, rows)) };
  }
}

async function* rowsOf(file: FileName, cursor: Cursor<Answer>): AsyncGenerator<WritableRow> {
  const { atOnce, rows } = questions[file] as Question<FileName>;
  for await (const answer of cursor.rows(atOnce)) yield* rows(answer);
}

async function* from(first: WritableRow, rest: AsyncGenerator<WritableRow>): AsyncGenerator<WritableRow> {
  yield first;
  yield* rest;
}
