import { deleteDB } from 'idb';
import { restoreOperation } from './restore.js';
import { openStore } from './store.js';

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

/** Leaves nothing of a person on this phone. */
export const wipeStore = (name: string): Promise<void> => deleteDB(name);
