import { afterEvent, EMPTY, type Event, type Outbox } from './outbox.js';
import type { Operation, Said } from './operation.js';
import { FORM, NewerForm, restoreOutbox, storedOperation } from './restore.js';
import { OF_OUTBOX, openStore, type OutboxWrite, type ShelfRow, type Store } from './store.js';
import { uuidV7 } from './uuid-v7.js';

interface Given {
  /** The organization's now, as far as the phone knows it. */
  readonly now: () => Date;
}

/**
 * What this phone holds for one person: the outbox, and what was downloaded for the day.
 *
 * The store on the phone is the truth; what is in memory follows it. Every event is one transaction there: it reads whether another tab was
 * faster, reduces, and writes what changed. Only then is anything shown as saved.
 */
export class Phone {
  private readonly listeners = new Set<() => void>();
  private turn: Promise<unknown> = Promise.resolve();
  private current: Outbox = EMPTY;
  private stamp = 0;
  private shelves: ReadonlyMap<string, ShelfRow> = new Map();
  private channel: BroadcastChannel | null = null;
  private isOld = false;
  private isClosed = false;
  private readonly typing = new Map<string, { readonly value: unknown; readonly kept: Promise<void> }>();
  private lastTrouble: unknown = null;
  /** When it was opened, while the store had no room to write that down. */
  private openedFull: string | null = null;

  private constructor(
    private readonly store: Store,
    readonly deviceId: string,
    private readonly given: Given,
  ) {}

  static async open(name: string, given: Given): Promise<Phone> {
    let phone: Phone | null = null;
    const store = await openStore(name, () => phone?.grewOld());
    const [known, shelf]: [unknown, readonly ShelfRow[]] = await Promise.all([store.get('facts', 'deviceId'), store.getAll('shelf')]);
    const deviceId = typeof known === 'string' ? known : uuidV7(Date.now());
    if (deviceId !== known) await store.put('facts', deviceId, 'deviceId');
    phone = new Phone(store, deviceId, given);
    phone.shelves = new Map(shelf.map((row) => [row.name, row]));
    phone.listen(name);
    await phone.restart(given.now().toISOString());
    return phone;
  }

  get outbox(): Outbox {
    return this.current;
  }

  /** Whether a newer version of the product has taken over: this page may only look. */
  get isOldPage(): boolean {
    return this.isOld;
  }

  /** Why the last thing could not be kept; null where it was. */
  get trouble(): unknown {
    return this.lastTrouble;
  }

  /** Whether its page is gone. */
  get isShut(): boolean {
    return this.isClosed;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Saves something: when it returns, it is on the phone. */
  async save(
    said: Said,
    options: { readonly draft?: string; readonly picture?: ArrayBuffer; readonly at?: Date } = {},
  ): Promise<Operation> {
    if (this.isClosed) throw new Error('This phone is closed.');
    const key = uuidV7(Date.now());
    const at = (options.at ?? this.given.now()).toISOString();
    await this.happen({ type: 'saved', key, at, said, draft: options.draft }, options.picture);
    const saved = this.current.operations.findLast((one) => one.subject === said.subject);
    if (!saved) throw new Error('What was saved is not in the outbox.');
    return saved;
  }

  /**
   * One event, after those before it. What is heard after the phone was closed is left: it stands as on its way, and is sent again when the phone
   * is opened next.
   */
  happen(event: Event, picture?: ArrayBuffer): Promise<void> {
    if (this.isClosed) return Promise.resolve();
    const mine = this.turn.then(() => this.write(event, picture));
    this.turn = mine.catch(() => undefined);
    return mine;
  }

  /** What is typed, key by key: fingers that are faster than the store are written once for all keys that it missed. */
  type(draft: string, value: unknown): Promise<void> {
    const waiting = this.typing.get(draft);
    if (waiting) {
      this.typing.set(draft, { ...waiting, value });
      return waiting.kept;
    }
    const kept = this.turn.then(() => {
      const latest = this.typing.get(draft)?.value;
      this.typing.delete(draft);
      return this.isClosed ? undefined : this.write({ type: 'typed', draft, value: latest, at: this.given.now().toISOString() }, undefined);
    });
    this.turn = kept.catch(() => undefined);
    this.typing.set(draft, { value, kept });
    return kept;
  }

  shelved(name: string): ShelfRow | null {
    return this.shelves.get(name) ?? null;
  }

  shelvedNames(prefix: string): readonly string[] {
    return [...this.shelves.keys()].filter((name) => name.startsWith(prefix));
  }

  /** Puts a download on the shelf, with when it was asked for; with null, takes it off. */
  async shelve(name: string, data: unknown, at: string): Promise<void> {
    if (this.isClosed) return;
    const row: ShelfRow = { name, data, at };
    if (data === null) await this.store.delete('shelf', name);
    else await this.store.put('shelf', row);
    const next = new Map(this.shelves);
    if (data === null) next.delete(name);
    else next.set(name, row);
    // Only beside a download: a phone whose clock runs ahead, without signal, must not lose its day.
    for (const old of data === null ? [] : oldOn(next, at)) {
      await this.store.delete('shelf', old);
      next.delete(old);
    }
    this.shelves = next;
    this.tell();
  }

  async picture(key: string): Promise<ArrayBuffer | null> {
    return (await this.store.get('pictures', key))?.bytes ?? null;
  }

  async fact(name: string): Promise<unknown> {
    return this.store.get('facts', name);
  }

  async keepFact(name: string, value: unknown): Promise<void> {
    await this.store.put('facts', value, name);
  }

  /** Closes it when what was begun is on the phone. */
  close(): void {
    this.isClosed = true;
    void this.turn.finally(() => {
      this.channel?.close();
      this.store.close();
    });
  }

  /** A phone that is full opens too: what is on it is shown, and goes on when there is room again. */
  private async restart(at: string): Promise<void> {
    try {
      await this.happen({ type: 'restarted', at });
    } catch (problem) {
      if (!isFull(problem)) throw problem;
      this.openedFull = at;
      const tx = this.store.transaction([...OF_OUTBOX], 'readonly') as unknown as OutboxWrite;
      this.current = this.restarted(await this.present(tx));
    }
  }

  /** What was on its way when the page before ended waits again. */
  private restarted(outbox: Outbox): Outbox {
    return this.openedFull === null ? outbox : afterEvent(outbox, { type: 'restarted', at: this.openedFull });
  }

  private async write(event: Event, picture: ArrayBuffer | undefined): Promise<void> {
    const tx = this.store.transaction([...OF_OUTBOX], 'readwrite') as unknown as OutboxWrite;
    try {
      const before = await this.present(tx);
      const after = afterEvent(this.restarted(before), event);
      const stamp = Number((await tx.objectStore('facts').get('stamp')) ?? 0) + 1;
      await put(tx, before, after, { stamp });
      if (picture && event.type === 'saved') await tx.objectStore('pictures').put({ key: event.key, bytes: picture });
      await tx.done;
      this.current = after;
      this.stamp = stamp;
      this.openedFull = null;
      this.lastTrouble = null;
    } catch (problem) {
      this.lastTrouble = problem;
      if (problem instanceof NewerForm) this.isOld = true;
      this.tell();
      await tx.done.catch(() => undefined);
      throw problem;
    }
    this.channel?.postMessage('changed');
    this.tell();
  }

  /** The outbox as it is in the store now: what is in memory, unless another tab was faster. */
  private async present(tx: OutboxWrite): Promise<Outbox> {
    const facts = tx.objectStore('facts');
    const [form, stamp] = await Promise.all([facts.get('form'), facts.get('stamp')]);
    if (Number(form ?? FORM) > FORM) throw new NewerForm('another tab');
    if (this.stamp !== 0 && stamp === this.stamp) return this.current;
    const [rows, held, operations] = await Promise.all([
      tx.objectStore('drafts').getAll(),
      facts.get('outbox') as Promise<Readonly<Record<string, unknown>> | undefined>,
      tx.objectStore('operations').getAll(),
    ]);
    return restoreOutbox(operations, Object.fromEntries(rows.map(({ name, value }) => [name, value])), held ?? {});
  }

  private async reload(): Promise<void> {
    const tx = this.store.transaction([...OF_OUTBOX], 'readwrite') as unknown as OutboxWrite;
    this.current = await this.present(tx);
    this.stamp = Number((await tx.objectStore('facts').get('stamp')) ?? 0);
    await tx.done;
    this.tell();
  }

  private listen(name: string): void {
    if (typeof BroadcastChannel === 'undefined') return;
    this.channel = new BroadcastChannel(name);
    this.channel.onmessage = () => {
      if (this.isClosed) return;
      this.turn = this.turn.then(() => this.reload()).catch(() => this.grewOld());
    };
  }

  private grewOld(): void {
    this.isOld = true;
    this.tell();
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

const isFull = (problem: unknown): boolean => problem instanceof DOMException && problem.name === 'QuotaExceededError';

/** Days over are not kept on the phone: what was downloaded longer ago than this is taken off. */
const SHELF_DAYS = 14;
const DAY_MS = 86_400_000;

const oldOn = (shelves: ReadonlyMap<string, ShelfRow>, now: string): readonly string[] =>
  [...shelves.values()].filter(({ at }) => Date.parse(now) - Date.parse(at) > SHELF_DAYS * DAY_MS).map(({ name }) => name);

/** Writes what an event changed, and nothing else. */
async function put(tx: OutboxWrite, before: Outbox, after: Outbox, facts: { readonly stamp: number }): Promise<void> {
  await putOperations(tx, before, after);
  const drafts = tx.objectStore('drafts');
  for (const [name, value] of Object.entries(after.drafts)) if (before.drafts[name] !== value) await drafts.put({ name, value });
  for (const name of Object.keys(before.drafts)) if (!(name in after.drafts)) await drafts.delete(name);
  const { nextSeq, batch, narrowed, lastSentAt, typedAt } = after;
  const kept = tx.objectStore('facts');
  await Promise.all([
    kept.put({ nextSeq, batch, narrowed, lastSentAt, typedAt }, 'outbox'),
    kept.put(FORM, 'form'),
    kept.put(facts.stamp, 'stamp'),
  ]);
}

/** A picture that the server has is not kept here; what is forgotten takes its picture along. */
async function putOperations(tx: OutboxWrite, before: Outbox, after: Outbox): Promise<void> {
  const [operations, pictures] = [tx.objectStore('operations'), tx.objectStore('pictures')];
  const had = new Map(before.operations.map((one) => [one.key, one]));
  for (const one of after.operations) {
    const old = had.get(one.key);
    had.delete(one.key);
    if (old === one) continue;
    await operations.put(storedOperation(one));
    if (one.picture === 'sent') await pictures.delete(one.key);
  }
  for (const gone of had.keys()) {
    await operations.delete(gone);
    await pictures.delete(gone);
  }
}
