import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { PropertyRow } from './property.entity.js';

/** All SQL of properties. */
export const properties = {
  countOfClient(tx: OrganizationTransaction, clientId: string): Promise<number> {
    return tx.of(PropertyRow).countBy({ organizationId: tx.organizationId, clientId, retiredAt: IsNull() });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<PropertyRow[]> {
    return tx.of(PropertyRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },
};
