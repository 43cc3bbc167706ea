import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { ZoneRow } from './zone.entity.js';

/** Questions about zones that no loader answers. */
export const zones = {
  /** The zone in use that a station of a controller waters. */
  atStation(tx: OrganizationTransaction, controllerId: string, station: number): Promise<ZoneRow | null> {
    return tx.of(ZoneRow).findOneBy({ organizationId: tx.organizationId, controllerId, station, retiredAt: IsNull() });
  },

  /** Locked until the transaction ends. */
  locked(tx: OrganizationTransaction, id: string): Promise<ZoneRow | null> {
    return tx.of(ZoneRow).findOne({ where: { organizationId: tx.organizationId, id }, lock: { mode: 'pessimistic_write' } });
  },
};
