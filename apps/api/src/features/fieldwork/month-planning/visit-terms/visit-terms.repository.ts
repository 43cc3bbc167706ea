import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { VisitTermsRow } from './visit-terms.entity.js';

/** All SQL of visit terms. */
export const visitTerms = {
  ofProperties(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<VisitTermsRow[]> {
    return tx.of(VisitTermsRow).findBy({ organizationId: tx.organizationId, propertyId: In([...propertyIds]) });
  },
};
