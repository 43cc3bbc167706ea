import { gql } from '@apollo/client';
import { describe, expect, it, vi } from 'vitest';
import { makeClient, nextAddress, signInAddress } from '../../../apps/web/src/graphql/client.js';
import { problemOf } from '../../../apps/web/src/graphql/problem.js';

const question = gql`query Who { me { memberId } }`;
const answering = (body: unknown, status = 200) =>
  vi.fn(
    async (_: RequestInfo | URL, __?: RequestInit) =>
      new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/json' } }),
  );

const failure = async (fetch: typeof globalThis.fetch, onSignedOut = () => {}): Promise<unknown> => {
  const client = makeClient({ uri: 'https://rillbook.invalid/graphql', fetch, onSignedOut });
  return client.query({ query: question }).then(
    () => null,
    (error: unknown) => error,
  );
};

describe('the line to the server', () => {
  it('names itself in a header and keeps the cookie to this site', async () => {
    const fetch = answering({ data: { me: null } });
    await makeClient({ uri: 'https://rillbook.invalid/graphql', fetch, onSignedOut: () => {} }).query({ query: question });
    const sent = fetch.mock.calls[0]?.[1];
    expect(new Headers(sent?.headers).get('x-rillbook-request')).toBe('1');
    expect(sent?.credentials).toBe('same-origin');
  });

  it('names the member whom the page shows, once it is known', async () => {
    const fetch = answering({ data: { me: { __typename: 'Me', memberId: 'm-june' } } });
    const client = makeClient({ uri: 'https://rillbook.invalid/graphql', fetch, onSignedOut: () => {} });
    for (let time = 0; time < 2; time += 1) await client.query({ query: question, fetchPolicy: 'network-only' });
    expect(fetch.mock.calls.map(([, sent]) => new Headers(sent?.headers).get('x-rillbook-member'))).toEqual([null, 'm-june']);
  });

  it.each(['SIGN_IN_NEEDED', 'UNAUTHENTICATED'])('leads to the door once when the server says %s', async (code) => {
    const leave = vi.fn();
    const client = makeClient({
      uri: 'https://rillbook.invalid/graphql',
      fetch: answering({ errors: [{ message: 'Sign in first.', extensions: { code } }] }),
      onSignedOut: leave,
    });
    for (let time = 0; time < 3; time += 1) await expect(client.query({ query: question, fetchPolicy: 'network-only' })).rejects.toThrow();
    expect(leave).toHaveBeenCalledTimes(1);
  });

  it('leads there for a 401 as well, and nowhere for other refusals', async () => {
    const leave = vi.fn();
    await failure(answering({ code: 'SIGN_IN_NEEDED' }, 401), leave);
    expect(leave).toHaveBeenCalledTimes(1);
    const refused = await failure(answering({ errors: [{ message: 'No meter 7.', extensions: { code: 'METER_NOT_FOUND' } }] }), leave);
    expect(problemOf(refused)).toEqual({ kind: 'refused', code: 'METER_NOT_FOUND', says: 'No meter 7.' });
    expect(leave).toHaveBeenCalledTimes(1);
  });

  it('tells no answer from a refusal', async () => {
    expect(problemOf(await failure(vi.fn(async () => Promise.reject(new TypeError('Failed to fetch')))))).toEqual({ kind: 'noAnswer' });
    const page = vi.fn(async () => new Response('<!doctype html>', { headers: { 'content-type': 'text/html' } }));
    expect(problemOf(await failure(page))).toEqual({ kind: 'noAnswer' });
    expect(problemOf(await failure(answering({ errors: 'bad gateway' }, 502)))).toEqual({ kind: 'noAnswer' });
  });
});

describe('the way back from the door', () => {
  it('leads to the page that was wanted', () => {
    const address = signInAddress('/findings?state=open&kind=steady flow');
    expect(nextAddress(address.slice(address.indexOf('?')))).toBe('/findings?state=open&kind=steady flow');
  });

  it('leads to no other site, and not round in a circle', () => {
    for (const next of [
      'https://elsewhere.invalid',
      '//elsewhere.invalid',
      '/\\elsewhere.invalid',
      'javascript:alert(1)',
      '/sign-in?next=/',
      '',
    ])
      expect(nextAddress(`?next=${encodeURIComponent(next)}`), next).toBe('/');
    expect(nextAddress('')).toBe('/');
  });
});
