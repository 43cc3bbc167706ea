import { deleteDB } from 'idb';
import { restoreOperation } from './restore.js';
import { openStore, OWNER, STORES } from './store.js';

/** How many things of a person only this phone has. */
export async function unsentIn(name: string): Promise<number> {
  const store = await openStore(name, () => undefined);
  try {
    const operations = (await store.getAll('operations')).map(restoreOperation);
    return operations.filter(({ state, picture }) => state !== 'sent' || picture === 'here' || picture === 'refused').length;
  } finally {
    store.close();
  }
}

/** What only this phone has of somebody. */
export interface Unsent {
  /** null where the store is from before names were kept */
  readonly owner: string | null;
  readonly count: number;
}

/** What others than the person signed in have on this phone and nowhere else: it is sent only when they sign in here themselves. */
export async function othersUnsent(own: string | null): Promise<readonly Unsent[]> {
  // Where a browser does not tell its stores nothing is known of them.
  const stores = (await indexedDB.databases?.()) ?? [];
  const names = stores.flatMap(({ name }) => (name?.startsWith(STORES) && name !== own ? [name] : []));
  const found = await Promise.all(names.map(async (name) => ({ owner: await ownerOf(name), count: await unsentIn(name) })));
  return found.filter(({ count }) => count > 0);
}

async function ownerOf(name: string): Promise<string | null> {
  const store = await openStore(name, () => undefined);
  try {
    const owner: unknown = await store.get('facts', OWNER);
    return typeof owner === 'string' ? owner : null;
  } finally {
    store.close();
  }
}

/** Leaves nothing of a person on this phone. */
export const wipeStore = (name: string): Promise<void> => deleteDB(name);
