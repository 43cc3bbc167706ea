import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { inTransaction, OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { organizations } from '../../../../platform/identity/organizations/organization.repository.js';
import type { Actor } from '../../../../platform/database/actor.js';

/** Transactions of their own for imports and exports, which outlast a request. */
@Injectable()
export class ExchangeTransactions {
  constructor(@Inject(DataSource) readonly source: DataSource) {}

  /** Whoever opens one must end it with commit or rollback. */
  open(by: Actor): Promise<OrganizationTransaction> {
    return OrganizationTransaction.open(this.source, by);
  }

  /** Runs work in a transaction: kept when it returns, undone when it throws. */
  within<T>(by: Actor, work: (tx: OrganizationTransaction) => Promise<T>): Promise<T> {
    return inTransaction(this.source, by, work);
  }

  /** Whether there is no organization at all, and never was a demonstration that somebody cleared. */
  async isServerNew(): Promise<boolean> {
    return (await organizations.none(this.source)) && !(await organizations.demoWasCleared(this.source));
  }
}
