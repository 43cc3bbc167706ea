import { ApolloClient, ApolloLink, InMemoryCache } from '@apollo/client';
import { of } from 'rxjs';
import { expect, it } from 'vitest';
import { postOf } from '../../../apps/web/src/features/fieldwork/device/post.js';

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
