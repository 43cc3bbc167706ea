import { type VolumeUnit, litresFrom } from '@rillbook/units/volume.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../platform/records/merge-counts.js';
import { bills } from './bill.repository.js';

/** A bill as a file tells it. */
export interface BillToMerge {
  readonly meterId: string;
  readonly startOn: string;
  /** the first day that is not billed */
  readonly endOn: string;
  readonly volume: number;
  readonly unit: VolumeUnit;
  readonly amount: number | null;
  readonly typed: Record<string, string>;
}

/** Merges bills by meter and first day, in one statement; the same again changes nothing. Of several with one name the last stands. */
export async function mergeBills(tx: OrganizationTransaction, rows: readonly BillToMerge[]): Promise<MergeCounts> {
  if (!rows.length) return { created: 0, changed: 0, same: 0 };
  const byName = new Map(
    rows.map((row) => [`${row.meterId} ${row.startOn}`, { ...row, litres: litresFrom(row.volume, row.unit) as number }]),
  );
  const { created, changed } = await bills.put(tx, [...byName.values()]);
  return { created, changed, same: rows.length - created - changed };
}
