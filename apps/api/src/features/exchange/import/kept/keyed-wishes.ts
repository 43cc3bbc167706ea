import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { KeptRow } from '../../../../platform/records/kept-row.js';
import { keptMerge } from './kept-merge.repository.js';
import type { Wish } from './merge-kept.js';

/** A wish for a thing that is found by some of its columns rather than by a name of its own. */
export interface KeyedWish<Row> {
  readonly key: Partial<Row>;
  readonly values: Partial<Row>;
  readonly typed: Readonly<Record<string, string>>;
}

/** Gives each wish the id of the row that has its key, or a new one. */
export async function keyedWishes<Row extends KeptRow>(
  tx: OrganizationTransaction,
  row: new () => Row,
  wished: readonly KeyedWish<Row>[],
): Promise<Wish<Row>[]> {
  const ids = await keptMerge.idsOfKeys(
    tx,
    row,
    wished.map(({ key }) => key),
  );
  return wished.map(({ key, values, typed }, at) => ({ id: ids[at] ?? randomUUID(), values: { ...values, ...key }, typed }));
}
