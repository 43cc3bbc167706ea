import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { DeviceRow } from './device.entity.js';

/** All SQL of phones. */
export const devices = {
  /** The last heard of first. */
  all(tx: OrganizationTransaction): Promise<DeviceRow[]> {
    return tx.of(DeviceRow).find({ where: { organizationId: tx.organizationId }, order: { heardAt: 'DESC', id: 'ASC' }, take: 500 });
  },

  async ofId(tx: OrganizationTransaction, id: string): Promise<DeviceRow | null> {
    return isUuid(id) ? tx.of(DeviceRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  async forget(tx: OrganizationTransaction, id: string): Promise<void> {
    await tx.of(DeviceRow).delete({ organizationId: tx.organizationId, id });
  },

  async keep(tx: OrganizationTransaction, row: DeviceRow): Promise<void> {
    await tx.of(DeviceRow).upsert(row, ['organizationId', 'id']);
  },
};
