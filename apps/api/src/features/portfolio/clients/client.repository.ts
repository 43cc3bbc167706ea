import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { ClientRow } from './client.entity.js';

/** All SQL of clients. */
export const clients = {
  /** Those in use, by name; for a member of role client, only their own. */
  inUse(tx: OrganizationTransaction): Promise<ClientRow[]> {
    const own = tx.actor.role === 'client' ? { id: tx.actor.clientId! } : {};
    return tx.of(ClientRow).find({ where: { organizationId: tx.organizationId, retiredAt: IsNull(), ...own }, order: { name: 'ASC' } });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<ClientRow[]> {
    return tx.of(ClientRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },
};
