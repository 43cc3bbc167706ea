import { defineLoader } from '../../../../platform/graphql/loader.js';
import type { VisitTermsRow } from './visit-terms.entity.js';
import { visitTerms } from './visit-terms.repository.js';

/** The visit terms of a property. */
export const visitTermsOfProperty = defineLoader<string, VisitTermsRow | null>(
  async (tx, ids) => new Map((await visitTerms.ofProperties(tx, ids)).map((row) => [row.propertyId, row])),
  null,
);
