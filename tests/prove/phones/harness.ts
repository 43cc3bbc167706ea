// Runs in Chromium, on a page of the product's own origin: the product's phone, sender and post, driven by the test.
import { deleteDB, openDB } from 'idb';
import { postOf } from '../../../apps/web/src/features/fieldwork/device/post.js';
import { makeClient } from '../../../apps/web/src/graphql/client.js';
import { arrivalOf, ownArrival, takenBackOf, withdrawalOf } from '../../../apps/web/src/features/fieldwork/stop/arrive/take-back.js';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { Sender } from '../../../apps/web/src/offline/sender.js';
import type { Operation, Said } from '../../../apps/web/src/offline/operation.js';

let phone: Phone;
let sender: Sender;
let skewMs = 0;
/** How long an answer is waited for: as on a real line, but where the line is known to hang, so that a proof of many histories ends. [ms] */
const PATIENCE_MS = 30_000;
const SHORT_PATIENCE_MS = 150;
let patienceMs = PATIENCE_MS;
const now = (): Date => new Date(Date.now() + skewMs);

interface Kept {
  readonly key: string;
  readonly body: string;
}

/** What a phone said at a stop: what it kept of it, what is gone, and what its person knows now. */
export interface Happened {
  readonly kept: readonly Kept[];
  readonly gone: readonly string[];
  readonly isHere: boolean;
  readonly hasWorked: boolean;
}

interface AtStop {
  readonly stopId: string;
  readonly arrivedAt: string;
  readonly zoneId: string;
}

/** What the test asks of a phone. */
export interface Harness {
  readonly open: (name: string, skewMs: number) => Promise<void>;
  readonly setClock: (skewMs: number) => void;
  /** @returns the key and body as they were acknowledged, or null where the phone could not keep it */
  readonly save: (said: Said, pictureBytes: number) => Promise<Kept | null>;
  /** comes to a stop, does something there, or takes its coming back */
  readonly atStop: (what: 'arrive' | 'work' | 'take back', at: AtStop, before: Pick<Happened, 'isHere' | 'hasWorked'>) => Promise<Happened>;
  /** @returns the keys that are gone */
  readonly withdraw: (subject: string) => Promise<readonly string[]>;
  /** @param hangs - Nobody will answer: it is given up soon, maybe while the server is still at it. */
  readonly send: (hangs: boolean) => Promise<void>;
  /** marks what waits as on its way, and goes no further: the page dies then */
  readonly dieSending: () => Promise<void>;
  readonly askAgain: (onlyRefused: boolean) => Promise<void>;
  readonly operations: () => readonly Operation[];
  /** writes the rows as the version before did */
  readonly olderRows: (name: string) => Promise<void>;
  /** closes the phone and throws away what it kept */
  readonly end: (name: string) => Promise<void>;
}

const harness: Harness = {
  async open(name, ahead) {
    skewMs = ahead;
    phone = await Phone.open(name, { now });
    sender = new Sender(
      phone,
      postOf(makeClient({ onSignedOut: () => undefined }), 'proof', () => patienceMs),
      now,
    );
  },
  setClock(ahead) {
    skewMs = ahead;
  },
  async save(said, pictureBytes) {
    const picture = pictureBytes > 0 ? await aPicture(pictureBytes) : undefined;
    try {
      const { key, body } = await phone.save(said, picture ? { picture } : {});
      return { key, body };
    } catch (problem) {
      if (phone.trouble === null) throw problem;
      return null;
    }
  },
  async atStop(what, at, before) {
    if (what === 'take back') return before.hasWorked ? { ...before, kept: [], gone: [] } : takeBack(at, before);
    const { stopId, arrivedAt } = at;
    const own = ownArrival(phone.outbox.operations, stopId);
    const come = own ?? (await keep('arrive', arrivalOf(stopId), { stopId, arrivedAt }));
    const work = what === 'work' && come ? await keepWork(at, come.key) : null;
    const kept = [own ? null : come, work].filter((one) => one !== null);
    return { kept, gone: [], isHere: before.isHere || come !== null, hasWorked: before.hasWorked || work !== null };
  },
  async withdraw(subject) {
    const before = phone.outbox.operations.map(({ key }) => key);
    await phone.happen({ type: 'withdrawn', subject });
    const left = new Set(phone.outbox.operations.map(({ key }) => key));
    return before.filter((key) => !left.has(key));
  },
  send(hangs) {
    patienceMs = hangs ? SHORT_PATIENCE_MS : PATIENCE_MS;
    return sender.run();
  },
  async dieSending() {
    const keys = phone.outbox.operations.filter(({ state }) => state === 'queued').map(({ key }) => key);
    await phone.happen({ type: 'sending', keys });
  },
  async askAgain(onlyRefused) {
    const keys = phone.outbox.operations
      .filter(({ state, picture }) => !onlyRefused || state === 'refused' || picture === 'refused')
      .map(({ key }) => key);
    await phone.happen({ type: 'asked again', keys });
  },
  operations: () => phone.outbox.operations,
  async olderRows(name) {
    phone.close();
    await new Promise((resolve) => setTimeout(resolve, 20));
    const store = await openDB(name);
    for (const row of (await store.getAll('operations')) as Record<string, unknown>[]) {
      if (row['picture'] !== 'none' || !row['hasLeft']) continue;
      const { form: _, hasLeft: __, picture: ___, ...older } = row;
      try {
        await store.put('operations', older);
      } catch (problem) {
        // A full phone keeps its rows as they are.
        if (!(problem instanceof DOMException)) throw problem;
      }
    }
    store.close();
  },
  async end(name) {
    phone.close();
    await deleteDB(name);
  },
};

const keep = (kind: string, subject: string, body: object): Promise<Kept | null> =>
  harness.save({ kind, payloadVersion: 1, subject, words: kind, body: JSON.stringify(body) }, 0);

const keepWork = ({ zoneId }: AtStop, visitId: string): Promise<Kept | null> =>
  keep('note-zone', `work ${visitId}`, { visitId, zoneId, kind: 'leak', count: 1, repaired: false, word: null });

/** What never left is taken out; what may have left is taken back by a word of its own. */
async function takeBack({ stopId }: AtStop, before: Pick<Happened, 'isHere' | 'hasWorked'>): Promise<Happened> {
  const { operations } = phone.outbox;
  const own = ownArrival(operations, stopId);
  const nothing = { ...before, kept: [], gone: [] };
  if (!own || !takenBackOf(operations, own, { id: own.key })) return nothing;
  try {
    const gone = await harness.withdraw(arrivalOf(stopId));
    if (gone.includes(own.key)) return { ...before, kept: [], gone, isHere: false };
  } catch (problem) {
    if (phone.trouble === null) throw problem;
    return nothing;
  }
  const word = await keep('withdraw-visit', withdrawalOf(own.key), { visitId: own.key });
  return word ? { ...before, kept: [word], gone: [], isHere: false } : nothing;
}

/** A picture with points that differ, so that two photos are two files. */
async function aPicture(seed: number): Promise<ArrayBuffer> {
  const canvas = new OffscreenCanvas(32, 32);
  const context = canvas.getContext('2d')!;
  context.fillStyle = `hsl(${seed % 360} 60% 50%)`;
  context.fillRect(0, 0, 32, 32);
  context.fillStyle = 'black';
  context.fillRect(seed % 30, (seed * 7) % 30, 2, 2);
  return (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer();
}

Object.assign(globalThis, { harness });
