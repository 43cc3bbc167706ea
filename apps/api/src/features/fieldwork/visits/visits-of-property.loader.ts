import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import type { VisitRow } from './visit.entity.js';
import { visits } from './visit.repository.js';

/** The visits to a property, the latest first. */
export const visitsOfProperty = defineLoader<string, readonly VisitRow[]>(
  async (tx, propertyIds) => grouped(await visits.seen(tx, { propertyIds }), (row) => row.propertyId),
  [],
);
