import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { type KeptTable, keptMerge, type Values } from './kept-merge.repository.js';
import type { Wish } from './merge-kept.js';

/** A wish for a thing that is found by some of its columns rather than by a name of its own. */
export interface KeyedWish {
  readonly key: Values;
  readonly values: Values;
  readonly typed: Readonly<Record<string, string>>;
}

/** Gives each wish the id of the row that has its key, or a new one. */
export async function keyedWishes(tx: OrganizationTransaction, table: KeptTable, wished: readonly KeyedWish[]): Promise<Wish[]> {
  const ids = await keptMerge.idsOfKeys(
    tx,
    table,
    wished.map(({ key }) => key),
  );
  return wished.map(({ key, values, typed }, at) => ({ id: ids[at] ?? randomUUID(), values: { ...values, ...key }, typed }));
}
