import { In, MoreThan, MoreThanOrEqual } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { DeviceRow } from './device.entity.js';

/** All SQL of phones. */
export const devices = {
  /** The last heard of first: those heard since a time, and those that still hold what nobody else has, however long ago that was. */
  all(tx: OrganizationTransaction, since: Date): Promise<DeviceRow[]> {
    const { organizationId } = tx;
    const some = MoreThan(0);
    return tx.of(DeviceRow).find({
      where: [{ heardAt: MoreThanOrEqual(since) }, { waiting: some }, { photosWaiting: some }, { refused: some }].map((which) => ({
        organizationId,
        ...which,
      })),
      order: { heardAt: 'DESC', id: 'ASC' },
      take: 500,
    });
  },

  async ofId(tx: OrganizationTransaction, id: string): Promise<DeviceRow | null> {
    return isUuid(id) ? tx.of(DeviceRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<DeviceRow[]> {
    return tx.of(DeviceRow).findBy({ organizationId: tx.organizationId, id: In(ids) });
  },

  async forget(tx: OrganizationTransaction, id: string): Promise<void> {
    await tx.of(DeviceRow).delete({ organizationId: tx.organizationId, id });
  },

  async keep(tx: OrganizationTransaction, row: DeviceRow): Promise<void> {
    await tx.of(DeviceRow).upsert(row, ['organizationId', 'id']);
  },
};
