import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { subjectOf, untoldTest } from '../../../apps/web/src/features/fieldwork/stop/tests/zone-test.js';
import { afterEvent, EMPTY } from '../../../apps/web/src/offline/outbox.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone, sentOf, takesAll } from './at-phone.js';
import { builtController, builtSettings, builtStop, builtVisit, NOW, property } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);

const dell = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });

const page = (stop: unknown = builtStop({ visit: builtVisit() }), step = '?step=zones', more: object = {}) =>
  drawAtPhone(<StopPage />, { at: `/today/st1${step}`, route: '/today/:stopId', viewer: dell, answers: { stop, ...more } });

/** A server that tells of the one note that it was sent last. */
function remembering() {
  let notes: readonly object[] = [];
  const sendFieldwork = (sent: Parameters<typeof takesAll>[0]) => {
    for (const { kind, body } of sent.operations)
      if (kind === 'note-zone') {
        const { noteId, ...note } = JSON.parse(body) as { noteId: string };
        notes = [{ id: noteId, recordedAt: NOW, ...note }];
      }
    return takesAll(sent);
  };
  return { stop: () => builtStop({ visit: builtVisit({ zoneNotes: notes }) }), sendFieldwork };
}

const noteOf = (count: number, given: object = {}) => ({
  ...{ id: 'n1', visitId: 'v1', zoneId: 'z1', kind: 'leak', count, word: null, repaired: false, recordedAt: '2026-09-24T17:10:00Z' },
  ...given,
});

const field = () => screen.getByLabelText<HTMLInputElement>(/A word/);

describe('a word', () => {
  const WORDS = 'north edge by the drive, two heads hit the wall';

  it('keeps every letter however fast it is typed, and is sent whole', async () => {
    const { user, calls } = page();
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await user.type(field(), WORDS);
    expect(field().value).toBe(WORDS);
    await user.click(screen.getByRole('checkbox', { name: 'Repaired now' }));
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)).toMatchObject({ word: WORDS, repaired: true, count: 1 }));
    expect(field().value).toBe(WORDS);
  });

  it('leaves the caret where it is typed', async () => {
    const { user } = page();
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await user.type(field(), 'abcdef');
    await user.type(field(), 'XYZ', { initialSelectionStart: 0, initialSelectionEnd: 0 });
    expect(field().value).toBe('XYZabcdef');
  });
});

describe('what another phone said', () => {
  it('is shown once the server tells it, though this phone had said something before', async () => {
    let told = 1;
    const { user, calls } = page(() => builtStop({ visit: builtVisit({ zoneNotes: told > 1 ? [noteOf(told)] : [] }) }));
    told = 5;
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await waitFor(() => expect(screen.getByRole('button', { name: 'Leak 5' })).toBeTruthy());
    await user.click(screen.getByRole('button', { name: 'One more' }));
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)?.['count']).toBe(6));
  });

  it('is corrected knowingly: what is sent says what stood there, however often it was changed before it was sent', async () => {
    const { user, calls } = page(builtStop({ visit: builtVisit({ zoneNotes: [noteOf(5)] }) }));
    await user.click(await screen.findByRole('button', { name: 'Leak 5' }));
    await user.click(screen.getByRole('button', { name: 'One more' }));
    await user.click(screen.getByRole('button', { name: 'One more' }));
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)?.['count']).toBe(7));
    expect(sentOf(calls, 'note-zone')[0]).toMatchObject({ over: { count: 5, word: null, repaired: false } });
  });

  it('is not known to who says something where nothing stood', async () => {
    const { user, calls } = page();
    await user.click(await screen.findByRole('button', { name: /^Leak/ }));
    await waitFor(() => expect(sentOf(calls, 'note-zone')).toHaveLength(1));
    expect(sentOf(calls, 'note-zone')[0]).toMatchObject({ count: 1, over: null });
  });
});

describe('something else', () => {
  it('says nothing before its word, and stays one note whatever the word becomes', async () => {
    const { stop, ...more } = remembering();
    const { user, calls } = page(stop, '?step=zones', more);
    await user.click(await screen.findByRole('button', { name: 'Something else' }));
    // Fingers rest longer than what is said without a word.
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(sentOf(calls, 'note-zone')).toEqual([]);
    await user.type(field(), 'a hole');
    await user.click(screen.getByRole('checkbox', { name: 'Repaired now' }));
    await waitFor(() => expect(sentOf(calls, 'note-zone').at(-1)).toMatchObject({ word: 'a hole', repaired: true }));
    const [first] = sentOf(calls, 'note-zone');
    await user.type(field(), ' in the fence');
    await user.click(screen.getByRole('checkbox', { name: 'Repaired now' }));
    await waitFor(() =>
      expect(sentOf(calls, 'note-zone').at(-1)).toMatchObject({ word: 'a hole in the fence', repaired: false, count: 1 }),
    );
    const names = sentOf(calls, 'note-zone').map(({ noteId }) => noteId);
    expect(new Set(names)).toEqual(new Set([first?.['noteId']]));
    expect(first?.['noteId']).toMatch(/^[0-9a-f-]{36}$/);
  });
});

describe('what another phone tested or left', () => {
  const flow = (id: string, testedAt: string, flowLPerMin: number) => ({
    ...{ id, visitId: 'v1', zoneId: 'z1', kind: 'flow', testedAt, flowLPerMin, flowSdLPerMin: 1, duLq: null, rateMmPerH: null },
    ...{ catchesMl: [], onRecord: true, minutes: 5, word: null, recordedBy: null },
  });
  const said = { kind: 'flow-test', payloadVersion: 1, subject: subjectOf('flow', 'st1', 'z1'), words: 'test', body: '{}' };
  const own = (key: string) => afterEvent(EMPTY, { type: 'saved', key, at: '2026-09-24T17:05:00Z', said }).operations;

  it('a test of this phone counts until the server tells of it; then the server says which was the last', () => {
    expect(untoldTest(own('t1'), said.subject, [])?.key).toBe('t1');
    const given = [flow('t1', '2026-09-24T17:05:00Z', 37), flow('t2', '2026-09-24T17:09:00Z', 75)];
    expect(untoldTest(own('t1'), said.subject, given)).toBeNull();
  });

  it('settings that somebody left later are shown, not what this phone had left', async () => {
    let present: unknown = builtController();
    const { user, calls } = page(
      () => builtStop({ visit: builtVisit(), property: { ...property, controllers: [present] } }),
      '?step=settings',
    );
    const button = await screen.findByRole('button', { name: 'Set as planned' });
    present = builtController({
      presentSettings: builtSettings('s-later', 'left', [], {
        effectiveAt: '2026-09-24T19:00:00Z',
        localTime: '2026-09-24T12:00',
        state: 'off',
      }),
    });
    await user.click(button);
    await waitFor(() => expect(sentOf(calls, 'settings')).toHaveLength(1));
    await waitFor(() => expect(screen.queryByText(/Kept at/)).toBeNull());
    expect(screen.getByRole('button', { name: 'Set as planned' })).toBeTruthy();
  });
});
