import { cleanup, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { PhonesPage } from '../../../apps/web/src/features/fieldwork/phones/PhonesPage.js';
import { readUnsentFile } from '../../../apps/web/src/features/fieldwork/phones/taken-file/read-unsent-file.js';
import { sendFile } from '../../../apps/web/src/features/fieldwork/phones/taken-file/send-file.js';
import type { Operation } from '../../../apps/web/src/offline/operation.js';
import type { Post } from '../../../apps/web/src/offline/sender.js';
import { drawPage } from '../support/draw-page.js';
import { takesAll } from './at-phone.js';

afterEach(cleanup);

const operation = (seq: number, given: Partial<Operation> = {}): Operation => ({
  ...{ key: `k${seq}`, seq, kind: 'note-zone', payloadVersion: 1, savedAt: '2026-09-24T16:10:00Z', body: '{}', subject: `s${seq}` },
  ...{ words: 'A zone', state: 'queued', tries: 0, hasLeft: false, told: null, sentAt: null, picture: 'none' },
  ...given,
});
const PICTURE = 'AQID';
const fileOf = (operations: readonly object[], drafts: object = {}) =>
  JSON.stringify({ product: 'Rillbook', deviceId: 'd1', operations, drafts });
const read = (text: string) => {
  const file = readUnsentFile(text);
  if (!file) throw new Error('not read');
  return file;
};
const applied = (batch: readonly Operation[]) => ({
  kind: 'answered' as const,
  verdicts: batch.map(({ key }) => ({ key, verdict: 'applied', problem: null, other: null })),
});

describe('a phone’s file', () => {
  it('is taken in whole, in the order in which it was saved, text first and then pictures', async () => {
    const photo = { ...operation(1, { kind: 'photo', picture: 'here' }), pictureBase64: PICTURE };
    const many = Array.from({ length: 70 }, (_, at) => operation(at + 2)).reverse();
    const operations = vi.fn<Post['operations']>((_, batch) => Promise.resolve(applied(batch)));
    const picture = vi.fn<Post['picture']>(() => Promise.resolve({ kind: 'kept' }));
    const sent = await sendFile({ operations, picture }, read(fileOf([...many, photo], { 'done.st1': {} })));
    expect(sent).toEqual({ taken: 71, refused: 0, photos: 1, photosLeft: 0, drafts: 1, isCut: false });
    expect(operations.mock.calls.flatMap(([, batch]) => batch.map(({ seq }) => seq))).toEqual(
      Array.from({ length: 71 }, (_, at) => at + 1),
    );
    expect(operations.mock.calls[0]![0]).toBe('d1');
    expect([...new Uint8Array(picture.mock.calls[0]![1])]).toEqual([1, 2, 3]);
  });

  it('stops where nobody answers, and loses only what the server breaks on', async () => {
    const file = read(fileOf([operation(1), operation(2), operation(3)]));
    const picture = () => Promise.reject(new Error('no picture is asked for'));
    const breaks = (on: string, kind: 'failed' | 'unanswered'): Post => ({
      picture,
      operations: (_, batch) =>
        Promise.resolve(batch.some(({ key }) => key === on) ? { kind, problem: { code: 'UNFORESEEN', message: '' } } : applied(batch)),
    });
    expect(await sendFile(breaks('k2', 'failed'), file)).toMatchObject({ taken: 2, refused: 1, isCut: false });
    expect(await sendFile(breaks('k2', 'unanswered'), file)).toMatchObject({ taken: 0, refused: 0, isCut: true });
  });

  it('says which pictures it could not take in', async () => {
    const photos = [
      { ...operation(1, { kind: 'photo', picture: 'here' }), pictureBase64: PICTURE },
      { ...operation(2, { kind: 'photo', picture: 'here' }), pictureBase64: null },
      { ...operation(3, { kind: 'photo', picture: 'refused' }), pictureBase64: '*' },
    ];
    const post: Post = { operations: (_, batch) => Promise.resolve(applied(batch)), picture: () => Promise.resolve({ kind: 'kept' }) };
    expect(await sendFile(post, read(fileOf(photos)))).toMatchObject({ taken: 3, photos: 1, photosLeft: 2 });
  });

  it('is told from any other file', () => {
    for (const other of ['', '{', '[]', '{"product":"Rillbook"}', fileOf([{ key: 'k1' }]), fileOf([{ ...operation(1), seq: 'one' }])])
      expect(readUnsentFile(other)).toBeNull();
  });

  it('is chosen on the page of the phones, which says what came of it', async () => {
    const { user, calls } = drawPage(<PhonesPage />, {
      at: '/routes/phones',
      route: '/routes/phones',
      answers: { devices: [], openOperations: [], sendFieldwork: takesAll },
    });
    const choose = await screen.findByLabelText<HTMLInputElement>('Choose the phone’s file', { selector: 'input' });
    await user.upload(choose, new File(['{"no": "such"}'], 'other.json', { type: 'application/json' }));
    expect((await screen.findByRole('alert')).textContent).toContain('nothing was taken from this one');
    await user.upload(choose, new File([fileOf([operation(1), operation(2)])], 'rillbook-unsent.json', { type: 'application/json' }));
    await screen.findByText(/2 records were taken in, none refused; no picture/);
    const [sent] = calls.filter(({ name }) => name === 'SendFieldwork');
    expect(sent?.variables).toMatchObject({ device: { id: 'd1' }, operations: [{ key: 'k1' }, { key: 'k2' }] });
  });
});
