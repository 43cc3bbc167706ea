import { Injectable } from '@nestjs/common';
import type { Actor } from '../../../platform/database/actor.js';
import { holdExchange } from '../import/directory/hold-exchange.js';
import { ExchangeTransactions } from '../import/directory/transactions.repository.js';
import { openCursor } from './cursor.repository.js';
import type { ExportedFile } from './exported-file.js';
import { inputFiles } from './input-files.js';
import { accountsFile } from './outputs/accounts-file.js';
import { ACCOUNTS, type AccountAnswer } from './outputs/accounts.repository.js';
import { findingsFile } from './outputs/findings-file.js';
import { type FindingAnswer, FINDINGS } from './outputs/findings.repository.js';

/** Takes one file of an export after the other; each must be read to its end before the next comes. */
export type TakeFile = (file: ExportedFile) => Promise<void>;

/**
 * Exports everything that an import folder can hold, as it stands at one moment, and beside it what is computed from it.
 * Nothing is held in memory but a few thousand rows.
 */
@Injectable()
export class ExportDeed {
  constructor(private readonly transactions: ExchangeTransactions) {}

  run(by: Actor, take: TakeFile): Promise<void> {
    return this.transactions.within(by, async (tx) => {
      await holdExchange(tx, 'beside other readers');
      const files = await inputFiles(tx);
      const accounts = await openCursor<AccountAnswer>(tx, 'export_accounts', ACCOUNTS);
      const findings = await openCursor<FindingAnswer>(tx, 'export_findings', FINDINGS);
      for await (const file of files) await take(file);
      await take({ name: 'accounts.csv', text: accountsFile(accounts) });
      await take({ name: 'findings.csv', text: findingsFile(findings) });
    });
  }
}
