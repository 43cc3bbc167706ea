import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../platform/records/merge-counts.js';
import type { ReadingRow, ReadingSource } from './reading.entity.js';
import { type NewReading, readings } from './reading.repository.js';

/** A reading as a file tells it; a source that is not told leaves the one that is kept, else it is the crew. */
export interface ReadingToMerge {
  readonly meterId: string;
  readonly readAt: Date;
  readonly register: number;
  readonly source: ReadingSource | null;
  readonly note: string | null;
  readonly typed: Record<string, string>;
}

const nameOf = (row: { readonly meterId: string; readonly readAt: Date }): string => `${row.meterId} ${row.readAt.getTime()}`;

/**
 * Merges readings by meter and instant, in a few statements however many they are; the same again changes nothing.
 *
 * Another register is a correction: a new row, and the one before stays, replaced. Of several with one name the last stands.
 */
export async function mergeReadings(tx: OrganizationTransaction, rows: readonly ReadingToMerge[]): Promise<MergeCounts> {
  if (!rows.length) return { created: 0, changed: 0, same: 0 };
  const byName = new Map(rows.map((row) => [nameOf(row), row]));
  const wanted = [...byName.values()];
  await readings.hold(tx, [...new Set(wanted.map(({ meterId }) => meterId))]);
  const standing = new Map((await readings.standingAt(tx, wanted)).map((row) => [nameOf(row), row]));
  const fresh: NewReading[] = [];
  const renoted: ReturnType<typeof renote>[] = [];
  for (const row of wanted) {
    const before = standing.get(nameOf(row)) ?? null;
    if (before?.register !== row.register) fresh.push(reading(row, before));
    else if (!sameWords(row, before)) renoted.push(renote(row, before));
  }
  await readings.insert(tx, fresh);
  await readings.renote(tx, renoted);
  const created = fresh.filter(({ replacesId }) => replacesId === null).length;
  const changed = fresh.length - created + renoted.length;
  return { created, changed, same: rows.length - created - changed };
}

const reading = (row: ReadingToMerge, before: ReadingRow | null): NewReading => ({
  ...row,
  id: randomUUID(),
  source: row.source ?? before?.source ?? 'crew',
  deviceRecordId: null,
  replacesId: before?.id ?? null,
});

const renote = (row: ReadingToMerge, before: ReadingRow) => ({
  id: before.id,
  source: row.source ?? before.source,
  note: row.note,
  typed: row.typed,
});

const sameWords = (row: ReadingToMerge, before: ReadingRow): boolean =>
  (row.source ?? before.source) === before.source && row.note === before.note && sameCells(row.typed, before.typed);

function sameCells(a: Record<string, string>, b: Record<string, string>): boolean {
  const columns = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...columns].every((column) => a[column] === b[column]);
}
