import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { countInUse } from '../../../platform/records/kept-rows.js';
import { PropertyRow } from './property.entity.js';

/** What keeps a client, station or supplier from being retired: the properties in use that point at it. */
export async function propertiesThatNeed(
  tx: OrganizationTransaction,
  pointer: 'clientId' | 'weatherStationId' | 'waterSupplierId',
  id: string,
): Promise<{ by: string; count: number } | null> {
  const count = await countInUse(tx, PropertyRow, pointer, id);
  return count ? { by: 'property', count } : null;
}
