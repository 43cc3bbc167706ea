import { In, IsNull, Not } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import type { SaidBefore } from '../deeds/done-operation.js';
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

  /** The last that was heard of a kind and not refused, but for one: whose it is, when it was saved, and what its body holds. */
  async lastSaying(tx: OrganizationTransaction, said: SaidBefore, butKey: string): Promise<OperationRow | null> {
    const { kind, personId, savedAt, holds } = said;
    const [{ id } = { id: null }] = await tx.query<{ id: string | null }>(
      `select id from field_operation
         where organization_id = $1 and kind = $2 and id <> $3 and verdict <> 'refused'
           and ($4::uuid is null or person_id = $4) and ($5::timestamptz is null or saved_at = $5)
           and ($6::text[] is null or exists (select from unnest($6::text[]) as part where position(part in body) > 0))
         order by received_at desc, device_seq desc limit 1`,
      [tx.organizationId, kind, butKey, personId, savedAt ?? null, holds ?? null],
    );
    return id === null ? null : this.ofKey(tx, id);
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
