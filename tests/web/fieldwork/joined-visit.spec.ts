import { expect, it } from 'vitest';
import { withOutbox } from '../../../apps/web/src/features/fieldwork/device/with-outbox.js';

// Two phones of a crew arrive at one stop: the server has one visit, and the second phone goes on under the name that it gave.

const saved = (key: string, kind: string, body: object) => ({ key, kind, body: JSON.stringify(body), state: 'waiting' }) as never;
const note = (visitId: string, count: number) =>
  saved('n1', 'note-zone', { visitId, zoneId: 'z1', kind: 'leak', count, word: null, repaired: false });
const arrival = saved('mine', 'arrive', { stopId: 'st1', arrivedAt: '2026-09-24T17:10:00Z' });
const stop = { __typename: 'Stop', id: 'st1', visit: { __typename: 'Visit', id: 'theirs', closedAt: null, zoneNotes: [] } };
const notesIn = (data: unknown) => (data as { visit: { id: string; zoneNotes: { count: number }[] } }).visit;

it('shows what this phone said over the visit that somebody else had begun', () => {
  expect(notesIn(withOutbox(stop, [arrival, note('mine', 3)]))).toMatchObject({ id: 'theirs', zoneNotes: [{ count: 3 }] });
});

it('shows no visit where the arrival was taken back, and the next one', () => {
  const own = { ...stop, visit: { ...stop.visit, id: 'mine', arrivedAt: '2026-09-24T17:10:00.000Z' } };
  const back = saved('b1', 'withdraw-visit', { visitId: 'mine' });
  expect(withOutbox(own, [arrival, back])).toMatchObject({ visit: null });
  // Somebody else had come too: the visit is theirs now, from when they came.
  const theirs = { ...own, visit: { ...own.visit, arrivedAt: '2026-09-24T17:30:00.000Z' } };
  expect(withOutbox(theirs, [arrival, back])).toMatchObject({ visit: { id: 'mine', arrivedAt: '2026-09-24T17:30:00.000Z' } });
  const next = saved('next', 'arrive', { stopId: 'st1', arrivedAt: '2026-09-24T18:00:00Z' });
  expect(withOutbox(own, [arrival, back, next])).toMatchObject({ visit: { id: 'next', arrivedAt: '2026-09-24T18:00:00Z' } });
});

it('shows nothing there that was said of the visit to another stop', () => {
  const elsewhere = saved('mine', 'arrive', { stopId: 'st2', arrivedAt: '2026-09-24T17:10:00Z' });
  expect(notesIn(withOutbox(stop, [elsewhere, note('mine', 3)])).zoneNotes).toEqual([]);
});
