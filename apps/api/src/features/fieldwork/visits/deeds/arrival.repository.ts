import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { VisitRow } from '../visit.entity.js';
import { ArrivalRow } from './arrival.entity.js';

/** All SQL of arrivals. */
export const arrivals = {
  /** Until the transaction ends nobody else arrives at the stop. */
  async hold(tx: OrganizationTransaction, stopId: string): Promise<void> {
    await tx.query('select pg_advisory_xact_lock(hashtextextended($1, 42))', [`${tx.organizationId} ${stopId}`]);
  },

  async ofName(tx: OrganizationTransaction, id: string): Promise<ArrivalRow | null> {
    return isUuid(id) ? tx.of(ArrivalRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  /** The visit of a stop: of several from before phones joined, the one that is still open, else the latest. */
  visitOfStop(tx: OrganizationTransaction, stopId: string): Promise<VisitRow | null> {
    return tx.of(VisitRow).findOne({
      where: { organizationId: tx.organizationId, stopId },
      order: { closedAt: { direction: 'DESC', nulls: 'FIRST' }, arrivedAt: 'DESC', id: 'ASC' },
    });
  },

  /** Whether a person came to a visit, as the first or later. */
  hasCome(tx: OrganizationTransaction, visitId: string, personId: string): Promise<boolean> {
    return tx.of(ArrivalRow).existsBy({ organizationId: tx.organizationId, visitId, personId });
  },

  /** The first arrival at a visit that was not taken back. */
  firstStanding(tx: OrganizationTransaction, visitId: string): Promise<ArrivalRow | null> {
    return tx
      .of(ArrivalRow)
      .findOne({ where: { organizationId: tx.organizationId, visitId, withdrawnAt: IsNull() }, order: { arrivedAt: 'ASC', id: 'ASC' } });
  },

  async withdraw(tx: OrganizationTransaction, id: string, withdrawnAt: Date): Promise<void> {
    await tx.of(ArrivalRow).update({ organizationId: tx.organizationId, id }, { withdrawnAt });
  },

  async insert(tx: OrganizationTransaction, row: ArrivalRow): Promise<void> {
    await tx.of(ArrivalRow).insert(row);
  },
};
