import { In, IsNull, Not } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { crewsInScope } from '../crews/crew-scope.js';
import { VisitRow } from './visit.entity.js';

/** All SQL of visits. */
export const visits = {
  /** Those of the crews whose work the actor sees, the latest first; of what was withdrawn only what is asked for by its id, or as such. */
  async seen(
    tx: OrganizationTransaction,
    where: { ids?: readonly string[]; stopIds?: readonly string[]; propertyIds?: readonly string[]; withdrawn?: boolean },
  ): Promise<VisitRow[]> {
    const crews = await crewsInScope(tx);
    return tx.of(VisitRow).find({
      where: {
        organizationId: tx.organizationId,
        ...(where.ids && { id: In(where.ids.filter(isUuid)) }),
        ...(where.stopIds && { stopId: In([...where.stopIds]) }),
        ...(where.propertyIds && { propertyId: In([...where.propertyIds]) }),
        ...(!where.ids && { withdrawnAt: where.withdrawn ? Not(IsNull()) : IsNull() }),
        ...(crews && { crewId: In([...crews]) }),
      },
      order: { arrivedAt: 'DESC', id: 'ASC' },
    });
  },

  /** Locked until the transaction ends. */
  locked(tx: OrganizationTransaction, id: string): Promise<VisitRow | null> {
    return tx.of(VisitRow).findOne({ where: { organizationId: tx.organizationId, id }, lock: { mode: 'pessimistic_write' } });
  },

  async insert(tx: OrganizationTransaction, row: VisitRow): Promise<void> {
    await tx.of(VisitRow).insert(row);
  },

  async update(tx: OrganizationTransaction, id: string, values: Partial<VisitRow>): Promise<void> {
    await tx.of(VisitRow).update({ organizationId: tx.organizationId, id }, values);
  },
};
