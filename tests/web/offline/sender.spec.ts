import 'fake-indexeddb/auto';
import { ApolloClient, ApolloLink, InMemoryCache } from '@apollo/client';
import { IDBFactory } from 'fake-indexeddb';
import { NEVER } from 'rxjs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { postOf } from '../../../apps/web/src/features/fieldwork/device/post.js';
import type { Operation } from '../../../apps/web/src/offline/operation.js';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { type Post, Sender } from '../../../apps/web/src/offline/sender.js';

const now = () => new Date('2026-09-24T17:43:00Z');

let phone: Phone;
beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  phone = await Phone.open('sender', { now });
});
afterEach(() => {
  phone.close();
  vi.unstubAllGlobals();
});

const save = (subject: string, hasPicture = false): Promise<Operation> =>
  phone.save(
    { kind: 'note', payloadVersion: 1, body: '{}', subject, words: subject, hasPicture },
    hasPicture ? { picture: new ArrayBuffer(8) } : {},
  );

const states = () => phone.outbox.operations.map(({ subject, state }) => [subject, state]);

/** A line that takes everything and never answers. */
const silent = new ApolloClient({ link: new ApolloLink(() => NEVER as never), cache: new InMemoryCache() });

/** A server that takes all, but breaks on everything that comes with a poison record. */
function breaking(): Post & { readonly batches: string[][] } {
  const batches: string[][] = [];
  return {
    batches,
    operations: (_, batch) => {
      if (batch.length > 0) batches.push(batch.map(({ subject }) => subject));
      if (batch.some(({ subject }) => subject === 'poison'))
        return Promise.resolve({ kind: 'failed', problem: { code: 'UNFORESEEN', message: 'broke' } });
      return Promise.resolve({
        kind: 'answered',
        verdicts: batch.map(({ key }) => ({ key, verdict: 'applied', problem: null, other: null })),
      });
    },
    picture: () => Promise.resolve({ kind: 'kept' }),
  };
}

describe('a request that hangs', () => {
  const limits = { short: () => 20, long: () => 3_600_000 };

  it('is given up when its time is over, and what it carried waits to be sent again under the same name', async () => {
    const { key } = await save('reading');
    await new Sender(phone, postOf(silent, 'test', limits.short), now).run();
    expect(phone.outbox.operations).toMatchObject([{ key, state: 'queued', hasLeft: true, tries: 0 }]);
    const { operations } = postOf(silent, 'test', limits.short);
    expect(await operations('device', phone.outbox.operations, { waiting: 1, photos: 0, refused: 0, underWay: 0, oldestAt: null })).toEqual(
      {
        kind: 'unanswered',
      },
    );
  });

  it('is given up too when it carries a picture, and the line is let go', async () => {
    const asked: AbortSignal[] = [];
    vi.stubGlobal('fetch', (_: string, { signal }: { signal: AbortSignal }) => {
      asked.push(signal);
      return new Promise((_resolve, reject) => {
        signal.addEventListener('abort', () => reject(signal.reason as Error));
      });
    });
    const photo = await save('photo', true);
    expect(await postOf(silent, 'test', limits.short).picture(photo, new ArrayBuffer(8))).toEqual({ kind: 'unanswered' });
    expect(asked.map(({ aborted }) => aborted)).toEqual([true]);
  });

  it('gets more time the more it carries', async () => {
    const sizes: number[] = [];
    const post = postOf(silent, 'test', (bytes) => {
      sizes.push(bytes);
      return 1;
    });
    const waiting = { waiting: 2, photos: 0, refused: 0, underWay: 0, oldestAt: null };
    const one = await save('one');
    const two = await save('two');
    await post.operations('device', [one], waiting);
    await post.operations('device', [one, two], waiting);
    expect(sizes[1]).toBeGreaterThan(sizes[0]! * 1.9);
  });
});

describe('a record on which the server breaks', () => {
  it('is refused alone: what was saved before and after it is sent', async () => {
    for (let nth = 0; nth < 20; nth += 1) await save(nth === 9 ? 'poison' : `note ${nth}`);
    const post = breaking();
    const sender = new Sender(phone, post, now);
    for (let tries = 0; tries < 3; tries += 1) await sender.run();
    expect(states().filter(([, state]) => state !== 'sent')).toEqual([['poison', 'refused']]);
    expect(states().filter(([, state]) => state === 'sent')).toHaveLength(19);
    expect(phone.outbox.operations.find(({ subject }) => subject === 'poison')?.told?.problem?.code).toBe('UNFORESEEN');
    // Halved, then alone: some twenty requests, not twenty times three.
    expect(post.batches.length).toBeLessThan(20);
  });

  it('does not jam the others when everything is tried again', async () => {
    const post = breaking();
    const sender = new Sender(phone, post, now);
    await save('poison');
    for (let tries = 0; tries < 3; tries += 1) await sender.run();
    await phone.happen({ type: 'asked again', keys: phone.outbox.operations.map(({ key }) => key) });
    await save('after');
    for (let tries = 0; tries < 3; tries += 1) await sender.run();
    expect(states()).toEqual([
      ['poison', 'refused'],
      ['after', 'sent'],
    ]);
  });

  it('is looked for again only as long as it takes: afterwards as many go at once as before', async () => {
    const post = breaking();
    const sender = new Sender(phone, post, now);
    await save('poison');
    await save('other');
    for (let tries = 0; tries < 3; tries += 1) await sender.run();
    for (let nth = 0; nth < 3; nth += 1) {
      for (let each = 0; each < 8; each += 1) await save(`round ${nth}, ${each}`);
      await sender.run();
    }
    expect(Math.max(...post.batches.slice(-3).map(({ length }) => length))).toBeGreaterThanOrEqual(4);
    expect(states().filter(([, state]) => state !== 'sent')).toHaveLength(1);
  });
});
