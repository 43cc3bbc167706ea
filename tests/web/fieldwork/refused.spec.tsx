import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { PhonePage } from '../../../apps/web/src/features/fieldwork/phone/PhonePage.js';
import { afterEvent, disputedIn, EMPTY, isOver, waitingIn } from '../../../apps/web/src/offline/outbox.js';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { storeName } from '../../../apps/web/src/offline/store.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone, sentOf } from './at-phone.js';

beforeEach(freshPhone);
afterEach(cleanup);

const viewer = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });
const STOP = '0190a000-0000-7000-8000-000000000001';
const METER = '0190a000-0000-7000-8000-000000000002';
const AT = '2026-09-24T17:00:00Z';

const reading = (register: number) => ({
  kind: 'reading',
  payloadVersion: 1,
  subject: `reading ${STOP} ${METER}`,
  words: 'the reading of Irrigation',
  body: JSON.stringify({ meterId: METER, register, readAt: AT, note: null, replacesId: null }),
});

/** A phone on which something was saved and told of by the server. */
async function told(verdict: { verdict: string; problem: { code: string; message: string } | null; other: unknown }): Promise<void> {
  const phone = await Phone.open(storeName(viewer.organization.id, viewer.memberId), { now: () => new Date(AT) });
  const { key } = await phone.save(reading(12));
  await phone.happen({ type: 'sending', keys: [key] });
  await phone.happen({ type: 'answered', at: AT, verdicts: [{ key, ...verdict }] });
  phone.close();
}

const page = (language: 'en' | 'es' = 'en') => drawAtPhone(<PhonePage />, { at: '/today/phone', route: '/today/phone', viewer, language });
const REFUSED = { verdict: 'refused', problem: { code: 'VALUE_REFUSED', message: 'register: found 12.' }, other: null };

it('shows what was refused in the reader’s language, and leads to where it is said anew', async () => {
  await told(REFUSED);
  page('es');
  expect(await screen.findByText('Algo de esto no puede ser. Corrígelo y guárdalo otra vez.')).toBeTruthy();
  expect(screen.getByRole('link', { name: 'Corregir' }).getAttribute('href')).toBe(`/today/${STOP}?step=meter&thing=${METER}`);
});

it('sets a refused thing aside with a reason, and keeps it as history', async () => {
  await told(REFUSED);
  const { user, calls } = page();
  await user.click(await screen.findByRole('button', { name: 'Set aside' }));
  await user.click(screen.getByRole('button', { name: 'Set aside' }));
  expect(screen.getByText(/Write why, so that it can be understood later/)).toBeTruthy();
  await user.type(screen.getByLabelText('Why it is not sent again'), 'Wrong meter');
  await user.click(screen.getByRole('button', { name: 'Set aside' }));
  expect(await screen.findByText(/^Set aside .*: Wrong meter$/)).toBeTruthy();
  expect(screen.getByRole('heading', { name: 'Refused and over' })).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Send again' })).toBeNull();
  await waitFor(() => expect(calls.some(({ name }) => name === 'SendFieldwork')).toBe(true));
  expect(sentOf(calls, 'reading')).toEqual([]);
});

it('tells what each said where two said different things, and who the other is', async () => {
  await told({ verdict: 'conflict', problem: null, other: { register: 15, readAt: AT, note: null, by: 'Ana Ruiz' } });
  const { user } = page();
  expect(await screen.findByText('Register: you said 12, Ana Ruiz said 15.')).toBeTruthy();
  expect(screen.getByText('Ana Ruiz said something else; the office sees both.')).toBeTruthy();
  // It is told above all that was sent, and in the line that is always there, until it was looked at.
  expect(screen.getByRole('heading', { name: /^Somebody else said something else/ })).toBeTruthy();
  expect(screen.getByText('Somebody else said something else of one record: look here.')).toBeTruthy();
  expect(screen.getByRole('link', { name: 'Correct it' }).getAttribute('href')).toBe(`/today/${STOP}?step=meter&thing=${METER}`);
  await user.click(screen.getByRole('button', { name: 'I have seen it' }));
  expect(await screen.findByText(/^Seen /)).toBeTruthy();
  expect(screen.getByText('Register: you said 12, Ana Ruiz said 15.')).toBeTruthy();
  expect(screen.queryByText(/of one record: look here/)).toBeNull();
});

it.each([
  [
    'en',
    'Register: here you said 12, there 15.',
    /^You said something else \(phone Android 14 · 9B21, .*\); the office sees both/,
    /^You said something else elsewhere/,
  ],
  [
    'es',
    'Registro: aquí dijiste 12, allá 15.',
    /^Dijiste otra cosa \(teléfono Android 14 · 9B21, .*\); la oficina ve las dos/,
    /^Dijiste otra cosa en otro lado/,
  ],
] as const)('says in %s on which other phone one person said something else, and when', async (language, both, where, heading) => {
  const other = { register: 15, by: 'Ana Ruiz', isSelf: true, phone: 'Android 14 · 9B21', savedAt: '2026-09-24T17:20:00Z' };
  await told({ verdict: 'conflict', problem: null, other });
  page(language);
  expect(await screen.findByText(both)).toBeTruthy();
  expect(screen.getByText(where)).toBeTruthy();
  expect(screen.getByRole('heading', { name: heading })).toBeTruthy();
});

it('tells of a dispute no more when it was said anew', () => {
  const conflict = { verdict: 'conflict', problem: null, other: { register: 15, by: 'Ana Ruiz' } };
  const disputed = [
    { type: 'saved' as const, key: 'a', at: AT, said: reading(12) },
    { type: 'sending' as const, keys: ['a'] },
    { type: 'answered' as const, at: AT, verdicts: [{ key: 'a', ...conflict }] },
  ].reduce(afterEvent, EMPTY);
  expect(disputedIn(disputed).map(({ key }) => key)).toEqual(['a']);
  expect(disputedIn(afterEvent(disputed, { type: 'saved', key: 'b', at: AT, said: reading(15) }))).toEqual([]);
});

it('counts a refused thing no more when it was said anew, and never forgets it', () => {
  const refusedOnce = [
    { type: 'saved' as const, key: 'a', at: AT, said: reading(12) },
    { type: 'sending' as const, keys: ['a'] },
    { type: 'answered' as const, at: AT, verdicts: [{ key: 'a', ...REFUSED }] },
  ].reduce(afterEvent, EMPTY);
  expect(waitingIn(refusedOnce).refused).toBe(1);
  const anew = afterEvent(refusedOnce, { type: 'saved', key: 'b', at: AT, said: reading(120) });
  expect(anew.operations.map(({ key, state }) => [key, state])).toEqual([
    ['a', 'refused'],
    ['b', 'queued'],
  ]);
  expect(waitingIn(anew)).toMatchObject({ refused: 0, waiting: 1 });
  expect(isOver(anew, anew.operations[0]!)).toBe(true);
  const later = afterEvent(anew, { type: 'restarted', at: '2027-09-24T17:00:00Z' });
  expect(later.operations.map(({ key }) => key)).toEqual(['a', 'b']);
});
