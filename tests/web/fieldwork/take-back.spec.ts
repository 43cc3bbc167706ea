import { expect, it } from 'vitest';
import { arrivalOf, ownArrival, takenBackOf, withdrawalOf } from '../../../apps/web/src/features/fieldwork/stop/arrive/take-back.js';
import type { Operation } from '../../../apps/web/src/offline/operation.js';
import { afterEvent, EMPTY, type Outbox } from '../../../apps/web/src/offline/outbox.js';

const said = (outbox: Outbox, key: string, kind: string, subject: string, body: object): Outbox =>
  afterEvent(outbox, {
    type: 'saved',
    key,
    at: '2026-09-24T17:10:00Z',
    said: { kind, payloadVersion: 1, subject, words: kind, body: JSON.stringify(body) },
  });
const come = (outbox: Outbox, key: string): Outbox => said(outbox, key, 'arrive', arrivalOf('st1'), { stopId: 'st1' });
const back = ({ operations }: Outbox, visitId: string): Operation | null =>
  takenBackOf(operations, ownArrival(operations, 'st1'), { id: visitId, closedAt: null });

it('takes an arrival that never left out of the outbox, and no word of it is sent', () => {
  const arrived = come(EMPTY, 'a1');
  expect(back(arrived, 'a1')?.key).toBe('a1');
  const withdrawn = afterEvent(arrived, { type: 'withdrawn', subject: arrivalOf('st1') });
  expect(withdrawn.operations).toEqual([]);
  // What is under way is not to be had back: it takes a word of its own.
  const left = afterEvent(arrived, { type: 'sending', keys: ['a1'] });
  expect(afterEvent(left, { type: 'withdrawn', subject: arrivalOf('st1') }).operations).toHaveLength(1);
  const told = said(left, 'w1', 'withdraw-visit', withdrawalOf('a1'), { visitId: 'a1' });
  expect(ownArrival(told.operations, 'st1')).toBeNull();
  expect(ownArrival(come(told, 'a2').operations, 'st1')?.key).toBe('a2');
});

it('takes it back also where another phone had begun the visit, but not once something was done under either name', () => {
  const joined = come(EMPTY, 'a1');
  expect(back(joined, 'theirs')?.key).toBe('a1');
  for (const visitId of ['a1', 'theirs']) expect(back(said(joined, 'n1', 'note-zone', 'zone', { visitId }), 'theirs')).toBeNull();
  expect(back(said(joined, 'r1', 'reading', 'meter', { meterId: 'm1' }), 'theirs')).toBeNull();
  expect(back(said(joined, 'n2', 'note-zone', 'zone', { visitId: 'elsewhere' }), 'theirs')?.key).toBe('a1');
});
