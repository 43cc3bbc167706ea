import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { OperationRow } from './operation.entity.js';

/** All SQL of the journal of operations. */
export const operations = {
  /** Until the transaction ends nobody else takes operations of these keys: equal deliveries come one after the other. */
  async hold(tx: OrganizationTransaction, keys: readonly string[]): Promise<void> {
    const names = keys.map((key) => `${tx.organizationId} ${key.toLowerCase()}`).sort();
    await tx.query(
      'select pg_advisory_xact_lock(hashtextextended(name, 41)) from unnest($1::text[]) with ordinality as held (name, place) order by place',
      [names],
    );
  },

  async ofKey(tx: OrganizationTransaction, key: string): Promise<OperationRow | null> {
    return isUuid(key) ? tx.of(OperationRow).findOneBy({ organizationId: tx.organizationId, id: key }) : null;
  },

  async keep(tx: OrganizationTransaction, row: Omit<OperationRow, 'receivedAt' | 'settledAt' | 'settledBy'>): Promise<void> {
    await tx.of(OperationRow).upsert(row as never, ['organizationId', 'id']);
  },

  /** What somebody should look at: two said different things, or it could not be done. The oldest first. */
  open(tx: OrganizationTransaction): Promise<OperationRow[]> {
    return tx.of(OperationRow).find({
      where: { organizationId: tx.organizationId, verdict: In(['conflict', 'refused']), settledAt: IsNull() },
      order: { receivedAt: 'ASC', deviceSeq: 'ASC', id: 'ASC' },
      take: 200,
    });
  },

  async settle(tx: OrganizationTransaction, key: string): Promise<void> {
    await tx
      .of(OperationRow)
      .update({ organizationId: tx.organizationId, id: key, settledAt: IsNull() }, { settledAt: new Date(), settledBy: tx.actor.personId });
  },
};
