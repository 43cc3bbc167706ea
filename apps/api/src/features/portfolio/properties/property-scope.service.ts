import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import type { PropertyRow } from './property.entity.js';
import { properties } from './property.repository.js';

/**
 * Which properties the actor may see: owner and office all, a crew those with a stop of one of their crews, a client their own.
 *
 * @param propertyIds the ones asked about; all in use when left out
 */
export async function inScope(tx: OrganizationTransaction, propertyIds?: readonly string[]): Promise<Set<string>> {
  const asked = propertyIds?.filter(isUuid);
  if (asked && !asked.length) return new Set();
  return new Set(await properties.idsInScope(tx, asked));
}

/** The property, retired ones too. Absent, another organization's and out of scope are the same: not found. */
export async function requireProperty(tx: OrganizationTransaction, id: string): Promise<PropertyRow> {
  const [row] = (await inScope(tx, [id])).has(id.toLowerCase()) ? await properties.ofIds(tx, [id]) : [];
  if (!row) throw platformProblems.notFound({ thing: 'property', id });
  return row;
}
