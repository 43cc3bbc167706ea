import DataLoader from 'dataloader';
import type { OrganizationTransaction } from '../database/organization-transaction.js';

/** One question, asked for many at once within a transaction. */
export interface Loader<Key, Value> {
  of(tx: OrganizationTransaction): DataLoader<Key, Value>;
}

/**
 * Declares a loader for one question.
 *
 * @param batch answers all keys with one statement, as a map; keys without an answer get `none`
 */
export function defineLoader<Key, Value>(
  batch: (tx: OrganizationTransaction, keys: readonly Key[]) => Promise<ReadonlyMap<Key, Value>>,
  none: Value,
): Loader<Key, Value> {
  const mark = Symbol('loader');
  return {
    of(tx) {
      const present = tx.kept.get(mark) as DataLoader<Key, Value> | undefined;
      if (present) return present;
      const made = new DataLoader<Key, Value>(async (keys) => {
        const answers = await batch(tx, keys);
        return keys.map((key) => answers.get(key) ?? none);
      });
      tx.kept.set(mark, made);
      return made;
    },
  };
}

/** Groups rows by a key, in the order they came. */
export function grouped<Key, Row>(rows: readonly Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group) group.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}
