import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { Actor } from '../../../platform/database/actor.js';
import { TouchAccounts } from '../../accounts/recompute/touch-accounts.service.js';
import { exchangeProblems } from './directory/exchange.problems.js';
import { FileRefusal, type ImportSource } from '../files/table-file.js';
import { problemAt } from '../problems/problem.js';
import { problemWords } from '../problems/problem-sentence.js';
import { Directory } from './directory/directory.js';
import { holdExchange } from './directory/hold-exchange.js';
import { ExchangeTransactions } from './directory/transactions.repository.js';
import { Touched } from './directory/touched.js';
import { ImportPass, type Passed } from './import-pass.js';
import type { ImportListener, ImportReport } from './import-report.js';

/** How an import is wished. */
export interface ImportWish {
  /** what to store: all rows or none, the good rows, or nothing at all (a look at what would become of them) */
  readonly rows: 'all' | 'good' | 'none';
  /** what must be there before the first row, such as the organization itself; undone with the import */
  readonly begin?: (tx: OrganizationTransaction) => Promise<void>;
  /** what belongs to the rows, done only when they are stored; undone with the import */
  readonly finish?: (tx: OrganizationTransaction) => Promise<void>;
  readonly listener?: ImportListener;
}

/**
 * Imports the files of a source in one transaction: everything that was wished, or nothing.
 *
 * Looking and storing are the same work; only the end of the transaction differs. What a look has counted is therefore
 * what storing does, and a row that the database cannot take is found by the look.
 */
@Injectable()
export class ImportDeed {
  constructor(
    private readonly transactions: ExchangeTransactions,
    private readonly accounts: TouchAccounts,
  ) {}

  /** @param by who imports; the record of changes names the way 'import' whatever the actor's own is */
  async run(by: Actor, files: ImportSource, wish: ImportWish): Promise<ImportReport> {
    const tx = await this.transactions.open({ ...by, way: 'import' });
    try {
      await wish.begin?.(tx);
      const touched = new Touched();
      const passed = await pass(tx, files, touched, wish.listener ?? {});
      const written = isToBeWritten(passed, wish.rows);
      if (written) {
        await wish.finish?.(tx);
        this.accounts.run(tx, await touched.propertyIds(tx));
        await tx.commit();
      } else await tx.rollback();
      return { ...passed, written };
    } catch (thrown) {
      await tx.rollback();
      throw thrown instanceof FileRefusal ? changedMeanwhile(thrown) : thrown;
    }
  }
}

async function pass(tx: OrganizationTransaction, files: ImportSource, touched: Touched, listener: ImportListener): Promise<Passed> {
  await holdExchange(tx, 'alone');
  const directory = await Directory.of(tx);
  return new ImportPass({ tx, directory, touched }, listener).run(files);
}

function isToBeWritten({ files, problemsTotal }: Passed, rows: ImportWish['rows']): boolean {
  if (rows === 'none') return false;
  if (problemsTotal === 0) return true;
  return rows === 'good' && files.some((file) => file.new + file.changed + file.same > 0);
}

function changedMeanwhile(refusal: FileRefusal): Error {
  const problem = problemAt({ file: '', line: refusal.parts.line ?? null }, refusal.code, refusal.parts);
  return exchangeProblems.fileChanged({ says: problemWords(problem, 'en') });
}
