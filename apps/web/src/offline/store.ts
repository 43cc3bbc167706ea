import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';

type Row = Readonly<Record<string, unknown>>;

/** A thing that was downloaded, as plain values, with when. */
export interface ShelfRow {
  readonly name: string;
  readonly data: unknown;
  /** ISO 8601 */
  readonly at: string;
}

interface Rooms extends DBSchema {
  operations: { key: string; value: Row };
  drafts: { key: string; value: { readonly name: string; readonly value: unknown } };
  shelf: { key: string; value: ShelfRow };
  pictures: { key: string; value: { readonly key: string; readonly bytes: ArrayBuffer } };
  facts: { key: string; value: unknown };
}

export type Store = IDBPDatabase<Rooms>;
export const OF_OUTBOX = ['operations', 'drafts', 'pictures', 'facts'] as const;
export type OutboxWrite = IDBPTransaction<Rooms, ('operations' | 'drafts' | 'pictures' | 'facts')[], 'readwrite'>;

const VERSION = 1;

/** What the names of all persons' stores begin with. */
export const STORES = 'rillbook.';

/** The fact that tells whose store it is. */
export const OWNER = 'owner';

/** The name of a person's store on this phone: what one person saved is never sent as another's. */
export const storeName = (organizationId: string, memberId: string): string => `${STORES}${organizationId}.${memberId}`;

/** A store that is being opened, and who is told when a newer page wants it. */
interface Opening {
  readonly store: Promise<Store>;
  onNewer: () => void;
}

const ahead = new Map<string, Opening>();

/** Begins to open a person's store before it is known that it is wanted: a page opened cold waits for nothing that could have begun before. */
export function openAhead(name: string): void {
  const opening = opened(name, () => ahead.delete(name));
  ahead.set(name, opening);
  // Whoever asks for it is told.
  opening.store.catch(() => undefined);
}

/** Opens a person's store. An older page that holds it open lets go of it when a newer one comes. */
export function openStore(name: string, onNewer: () => void): Promise<Store> {
  const opening = ahead.get(name) ?? opened(name, onNewer);
  ahead.delete(name);
  opening.onNewer = onNewer;
  return opening.store;
}

function opened(name: string, onNewer: () => void): Opening {
  const opening: Opening = { onNewer, store: openRooms(name, () => opening.onNewer()) };
  return opening;
}

function openRooms(name: string, onNewer: () => void): Promise<Store> {
  return openDB<Rooms>(name, VERSION, {
    upgrade(db) {
      db.createObjectStore('operations', { keyPath: 'key' });
      db.createObjectStore('drafts', { keyPath: 'name' });
      db.createObjectStore('shelf', { keyPath: 'name' });
      db.createObjectStore('pictures', { keyPath: 'key' });
      db.createObjectStore('facts');
    },
    blocking(_, __, event) {
      (event.target as IDBDatabase | null)?.close();
      onNewer();
    },
  });
}
