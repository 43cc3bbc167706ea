import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { WaterReportRow } from './water-report.entity.js';

/** All SQL of water reports. */
export const waterReports = {
  /** Those in use, the newest period first; for a member of role client those that were sent to them. */
  inUse(tx: OrganizationTransaction): Promise<WaterReportRow[]> {
    const own = tx.actor.role === 'client' ? { clientId: tx.actor.clientId!, state: 'sent' as const } : {};
    return tx.of(WaterReportRow).find({
      where: { organizationId: tx.organizationId, retiredAt: IsNull(), ...own },
      order: { untilOn: 'DESC', fromOn: 'ASC', id: 'ASC' },
    });
  },
};
