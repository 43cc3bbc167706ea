import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../platform/records/merge-counts.js';
import { pauses } from './rain-pause.repository.js';

/** A rain pause as a file tells it. */
export interface PauseToMerge {
  readonly controllerId: string;
  readonly pausedFrom: Date;
  readonly pausedUntil: Date | null;
  readonly typed: Record<string, string>;
}

/** Merges rain pauses by controller and beginning, in one statement; the same again changes nothing. Of several with one name the last stands. */
export async function mergePauses(tx: OrganizationTransaction, rows: readonly PauseToMerge[]): Promise<MergeCounts> {
  if (!rows.length) return { created: 0, changed: 0, same: 0 };
  const byName = new Map(rows.map((row) => [`${row.controllerId} ${row.pausedFrom.getTime()}`, row]));
  const { created, changed } = await pauses.put(tx, [...byName.values()]);
  return { created, changed, same: rows.length - created - changed };
}
