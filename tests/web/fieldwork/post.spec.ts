import { ApolloClient, ApolloLink, InMemoryCache } from '@apollo/client';
import { of } from 'rxjs';
import { expect, it } from 'vitest';
import { postOf } from '../../../apps/web/src/features/fieldwork/device/post.js';
import { phoneNameOf } from '../../../apps/web/src/features/fieldwork/phone-name.js';

const answering = (code: string) => {
  const errors = [{ message: code, extensions: { code, details: {} } }];
  const link = new ApolloLink(() => of({ data: null, errors }));
  return postOf(new ApolloClient({ link, cache: new InMemoryCache() }), '1');
};
const waiting = { waiting: 0, underWay: 0, photos: 0, refused: 0, oldestAt: null };

it('waits where the server gave way to others, and does not look for the record that is to blame', async () => {
  expect(await answering('BUSY').operations('a phone', [], waiting)).toEqual({ kind: 'unanswered' });
  expect(await answering('UNFORESEEN').operations('a phone', [], waiting)).toMatchObject({ kind: 'failed' });
});

it('is called what its browser runs on and the end of its own id, so that two phones of one person differ', () => {
  const ends = ['0190a000-0000-7000-8000-00000000a1b2', '0190a000-0000-7000-8000-00000000c3d4'];
  const agent = 'Browser/5.0 (Linux; Android 14; K) Engine/1';
  expect(ends.map((id) => phoneNameOf(agent, id))).toEqual(['Android 14 · A1B2', 'Android 14 · C3D4']);
  expect(phoneNameOf('Browser/5.0 (X11; Linux x86_64; rv:140.0)', ends[0]!)).toBe('Linux x86_64 · A1B2');
  expect(phoneNameOf('', ends[0]!)).toBe('A1B2');
});
