import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { WaterSupplierRow } from './water-supplier.entity.js';

/** All SQL of water suppliers. */
export const waterSuppliers = {
  /** Those in use, by name. */
  inUse(tx: OrganizationTransaction): Promise<WaterSupplierRow[]> {
    return tx.of(WaterSupplierRow).find({ where: { organizationId: tx.organizationId, retiredAt: IsNull() }, order: { name: 'ASC' } });
  },
};
