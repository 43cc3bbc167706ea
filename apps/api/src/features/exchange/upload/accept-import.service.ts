import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import type { ProblemLanguage } from '../problems/problem-sentence.js';
import { IMPORT, importJobOf } from './import-jobs.repository.js';
import { UploadFolder } from './upload-folder.js';
import { recordOf } from './upload-record.js';

/** Accepts an upload that was checked: its import is queued. Accepting twice is accepting once. */
@Injectable()
export class AcceptImport {
  constructor(private readonly jobs: Jobs) {}

  /** @returns the id of the background work */
  async run(tx: OrganizationTransaction, importId: string, wish: unknown, language: ProblemLanguage): Promise<string> {
    const rows = wishedRows(wish);
    const { report } = await recordOf(await UploadFolder.find(tx.organizationId, importId));
    const present = await importJobOf(tx, importId);
    if (present) return present.id;
    if (rows === 'all' && report.problemsTotal) throw exchangeProblems.rowsAreWrong({ problems: report.problemsTotal });
    if (!report.files.some((file) => file.new + file.changed + file.same > 0)) throw exchangeProblems.nothingToImport({});
    const job = await this.jobs.ask(tx, IMPORT, { importId, rows, personId: tx.actor.personId, language });
    return job.id;
  }
}

function wishedRows(wish: unknown): 'all' | 'good' {
  const rows: unknown = typeof wish === 'object' && wish !== null ? Reflect.get(wish, 'rows') : undefined;
  if (rows === 'all' || rows === 'good') return rows;
  throw platformProblems.valueRefused({ field: 'rows', found: rows, expected: "'all' or 'good'" });
}
