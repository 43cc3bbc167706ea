import { In, IsNull, Not } from 'typeorm';
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

  /** Kept again with another verdict it is something that nobody has looked at. */
  async keep(tx: OrganizationTransaction, row: Omit<OperationRow, 'receivedAt' | 'settledAt' | 'settledBy'>): Promise<void> {
    const { organizationId, id, verdict } = row;
    await tx.of(OperationRow).update({ organizationId, id, verdict: Not(verdict) }, { settledAt: null, settledBy: null });
    await tx.of(OperationRow).upsert(row as never, ['organizationId', 'id']);
  },

  async answer(tx: OrganizationTransaction, { id, verdict, answer }: Pick<OperationRow, 'id' | 'verdict' | 'answer'>): Promise<void> {
    await tx.of(OperationRow).update({ organizationId: tx.organizationId, id }, { verdict, answer: answer as never });
  },

  /** What somebody should look at: two said different things or decided beside each other, or it could not be done. The oldest first. */
  open(tx: OrganizationTransaction): Promise<OperationRow[]> {
    return tx.of(OperationRow).find({
      where: { organizationId: tx.organizationId, verdict: In(['conflict', 'refused', 'parallel']), settledAt: IsNull() },
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
