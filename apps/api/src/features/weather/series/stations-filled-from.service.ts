import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { stationRecords } from './station-record.repository.js';
import { neighbourOf } from './station-series.js';

/** Some stations, and those whose days may be filled from them. */
export async function stationsFilledFrom(tx: OrganizationTransaction, stationIds: readonly string[]): Promise<string[]> {
  if (stationIds.length === 0) return [];
  const all = await stationRecords.stations(tx);
  const named = new Set(stationIds);
  return all.filter((one) => named.has(one.id) || named.has(neighbourOf(one, all)?.station.id ?? '')).map(({ id }) => id);
}
