import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { giveToken, tokenOf } from '../../../apps/api/src/platform/identity/sessions/cookie.js';
import { hashPassword, passwordFits } from '../../../apps/api/src/platform/identity/sessions/passwords.js';
import { Sessions } from '../../../apps/api/src/platform/identity/sessions/sessions.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
});
afterAll(() => product.close());

const isSignedIn = async (who: Somebody): Promise<boolean> => (await who.send('{ me { memberId } }')).data.me !== null;

// OWASP ASVS 5.0, 7.3.1 and 7.3.2: an idle limit and an absolute one.
it.each([
  ['idle for more than fourteen days', `last_seen_at = now() - interval '15 days'`],
  ['older than its end', `expires_at = now() - interval '1 second'`],
])('ends a session that is %s', async (_, change) => {
  const somebody = await product.somebody(office.organizationId, 'office');
  expect(await isSignedIn(somebody)).toBe(true);
  await product.database.admin(`update session set ${change} where person_id = $1`, [somebody.personId]);
  expect(await isSignedIn(somebody)).toBe(false);
});

it('opens a session for thirty days, keeps only the hash of its token, and forgets those that have ended', async () => {
  await product.database.admin(`update session set expires_at = now() - interval '1 day' where person_id = $1`, [office.personId]);
  const token = await product.app.get(Sessions).open(office.personId, office.organizationId, 'a browser');
  expect(Buffer.from(token, 'base64url')).toHaveLength(32);
  const kept = await product.database.admin(
    `select encode(token_hash, 'hex') as hash, round(extract(epoch from expires_at - created_at) / 86400)::int as days, device from session where person_id = $1`,
    [office.personId],
  );
  expect(kept).toEqual([{ hash: createHash('sha256').update(token).digest('hex'), days: 30, device: 'a browser' }]);
});

// OWASP ASVS 5.0, 3.3.1: over https the cookie is Secure and carries the __Host- prefix (RFC 6265bis, 4.1.3.2).
it('gives the cookie the browser’s own promise over https', () => {
  const cookies: unknown[][] = [];
  const response = { cookie: (...given: unknown[]) => cookies.push(given) } as never;
  giveToken({ secure: true } as never, response, 'token');
  expect(cookies).toEqual([
    ['__Host-rillbook', 'token', { httpOnly: true, secure: true, sameSite: 'lax', path: '/', maxAge: 2_592_000_000 }],
  ]);
  const headers = { cookie: 'other=1; rillbook=plain; __Host-rillbook=bound' };
  expect(tokenOf({ secure: true, headers } as never)).toBe('bound');
  expect(tokenOf({ secure: false, headers } as never)).toBe('plain');
});

// OWASP ASVS 5.0, 11.4.2; OWASP Password Storage Cheat Sheet: argon2id, 19 MiB, two passes, one lane.
it('hashes passwords with argon2id, each with a salt of its own', async () => {
  const [one, other] = await Promise.all([hashPassword('quail under the hedge'), hashPassword('quail under the hedge')]);
  expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(one).not.toBe(other);
  expect(await passwordFits(one!, 'quail under the hedge')).toBe(true);
});

// OWASP ASVS 5.0, 6.3.8: whether an address is known must not be told by the time of the answer, so a stranger's costs a hash too.
it('refuses an address that is not known after hashing what was offered, as it does for a known one', async () => {
  const kept = await hashPassword('quail under the hedge');
  expect(await passwordFits(kept, 'a wrong guess')).toBe(false);
  expect(await passwordFits(null, 'a wrong guess')).toBe(false);
  // Even the decoy's own words open nothing.
  expect(await passwordFits(null, 'nobody has this password')).toBe(false);
});

it('answers a page only in the name of the member whom it shows: another who signed in beside it is somebody else', async () => {
  const asked = async (member: string) => {
    const answer = await fetch(`${product.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: office.cookie, 'x-rillbook-member': member },
      body: JSON.stringify({ query: '{ me { memberId } clients { id } }' }),
    });
    return (await answer.json()) as { data: object | null; errors?: { extensions: { code: string } }[] };
  };
  const other = await product.somebody(await product.organization(), 'office');
  office = await product.somebody(office.organizationId, 'office');
  expect((await asked(office.memberId)).data).toEqual({ me: { memberId: office.memberId }, clients: [] });
  expect((await asked(other.memberId)).errors?.map(({ extensions }) => extensions.code)).toEqual(['SIGN_IN_NEEDED']);
});
