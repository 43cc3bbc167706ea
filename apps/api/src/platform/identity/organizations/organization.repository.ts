import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { OrganizationItself } from './organization.entity.js';

/** All SQL of the organization itself. */
export const organizations = {
  /** The one whose transaction this is. */
  own(tx: OrganizationTransaction): Promise<OrganizationItself> {
    return tx.of(OrganizationItself).findOneByOrFail({ id: tx.organizationId });
  },
};
