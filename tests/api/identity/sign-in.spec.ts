import { afterAll, beforeAll, expect, it } from 'vitest';
import { hashPassword } from '../../../apps/api/src/platform/identity/sessions/passwords.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

const PASSWORD = 'quail under the hedge';
const DOCUMENT = `mutation($email: String!, $password: String!, $organizationId: ID) { signIn(email: $email, password: $password, organizationId: $organizationId) {
  __typename ... on SignedIn { me { role memberId crewIds clientId permissions person { email language } organization { name today now timeZone } memberships { organizationName role } } } ... on SignInRefused { code retryInSeconds } } }`;

let product: TestApp;
let office: Somebody;
let organizationId: string;

/** Sends a sign-in and keeps the cookie that came back. */
async function signIn(email: string, password: string, more: { organizationId?: string; cookie?: string } = {}) {
  const response = await fetch(`${product.url}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(more.cookie && { cookie: more.cookie }) },
    body: JSON.stringify({ query: DOCUMENT, variables: { email, password, organizationId: more.organizationId } }),
  });
  const body = (await response.json()) as { data: { signIn: Record<string, never> }; errors?: unknown[] };
  const [set] = response.headers.getSetCookie();
  return {
    result: body.data?.signIn as Record<string, unknown>,
    me: (body.data?.signIn as unknown as { me: Record<string, never> })?.me,
    errors: body.errors ?? [],
    set: set ?? '',
    cookie: (set ?? '').split(';')[0]!,
  };
}

const known = async (): Promise<Somebody> => {
  const somebody = await product.somebody(organizationId, 'office');
  await product.database.admin('update person set password_hash = $2 where id = $1', [somebody.personId, await hashPassword(PASSWORD)]);
  return somebody;
};

beforeAll(async () => {
  product = await startApp();
  organizationId = await product.organization('Tamarack Grounds');
  office = await known();
});
afterAll(() => product.close());

it('signs in with the right password and says who that is, in which organization, and what they may do', async () => {
  const { me, set } = await signIn(` ${office.email.toUpperCase()}`, PASSWORD);
  expect(me).toMatchObject({
    role: 'office',
    memberId: office.memberId,
    crewIds: [],
    clientId: null,
    person: { email: office.email, language: 'en' },
    organization: { name: 'Tamarack Grounds' },
    memberships: [{ organizationName: 'Tamarack Grounds', role: 'office' }],
  });
  expect(me['permissions']).toContain('write portfolio');
  expect(me['permissions']).not.toContain('manage members');
  expect(set).toMatch(/^rillbook=[\w-]{43}; .*HttpOnly; SameSite=Lax$/);
});

it('gives an unknown address and a wrong password the same answer', async () => {
  const refused = { __typename: 'SignInRefused', code: 'WRONG_EMAIL_OR_PASSWORD', retryInSeconds: null };
  expect((await signIn('nobody@example.test', PASSWORD)).result).toEqual(refused);
  expect((await signIn(office.email, 'quail under the fence')).result).toEqual(refused);
});

it('makes a new session at each sign-in and ends the one that was there', async () => {
  const first = await signIn(office.email, PASSWORD);
  const second = await signIn(office.email, PASSWORD, { cookie: first.cookie });
  expect(second.cookie).not.toBe(first.cookie);
  expect((await product.send('{ me { memberId } }', {}, first.cookie)).data.me).toBeNull();
  expect((await product.send('{ me { memberId } }', {}, second.cookie)).data.me).toEqual({ memberId: office.memberId });
});

it('signs out, and the token is worth nothing afterwards', async () => {
  const { cookie } = await signIn(office.email, PASSWORD);
  expect((await product.send('mutation { signOut }', {}, cookie)).data.signOut).toBe(true);
  expect((await product.send('{ me { memberId } }', {}, cookie)).data.me).toBeNull();
});

it('keeps the chosen language', async () => {
  expect((await office.send('mutation { chooseLanguage(language: es) { person { language } } }')).data.chooseLanguage).toEqual({
    person: { language: 'es' },
  });
  expect((await office.send('{ me { person { language } } }')).data.me).toEqual({ person: { language: 'es' } });
});

it('slows down guessing, and says how long to wait', async () => {
  const guessed = await known();
  for (let turn = 0; turn < 10; turn += 1)
    expect((await signIn(guessed.email, `guess ${turn}`)).result['code']).toBe('WRONG_EMAIL_OR_PASSWORD');
  const { result } = await signIn(guessed.email, PASSWORD);
  expect(result['code']).toBe('TOO_MANY_TRIES');
  expect(result['retryInSeconds']).toBeGreaterThan(800);
});
