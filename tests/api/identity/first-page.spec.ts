import { request as httpRequest } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { DEMO_PASSWORD, isFromHere } from '../../../apps/api/src/platform/identity/members/demo-doors.js';
import { hashPassword } from '../../../apps/api/src/platform/identity/sessions/passwords.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
const page = async () =>
  (await product.send('{ signInPage { empty demo { email password name role organizationName } } }')).data.signInPage;
const found = (email: string) =>
  product.send(
    'mutation($email: String!) { foundOrganization(name: "Heron Grounds", personName: "Ada Heron", email: $email, password: "a heron in the reeds") { me { role person { name } organization { name isDemo } } } }',
    { email },
  );

beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

it('founds the first organization of an empty server, and no second one, however many press at the same moment', async () => {
  expect(await page()).toEqual({ empty: true, demo: [] });
  const answers = await Promise.all(['a@example.test', 'b@example.test', 'c@example.test'].map(found));
  const [first] = answers.filter((answer) => answer.data?.foundOrganization);
  expect(first!.data.foundOrganization.me).toEqual({
    role: 'owner',
    person: { name: 'Ada Heron' },
    organization: { name: 'Heron Grounds', isDemo: false },
  });
  expect(answers.filter((answer) => answer.errors[0]?.extensions.code === 'SERVER_NOT_EMPTY')).toHaveLength(2);
  expect(await product.database.admin('select name from organization')).toEqual([{ name: 'Heron Grounds' }]);
  expect(await page()).toEqual({ empty: false, demo: [] });
});

/** A demonstration with somebody in it, and something of every depth. */
async function demonstration(): Promise<{ organizationId: string; owner: Somebody }> {
  const organizationId = await product.organization();
  await product.database.admin('update organization set is_demo = true where id = $1', [organizationId]);
  const owner = await product.somebody(organizationId, 'owner');
  await product.database.admin('update person set password_hash = $2 where id = $1', [owner.personId, await hashPassword(DEMO_PASSWORD)]);
  const { id: clientId } = (await owner.send('mutation { createClient(input: { name: "Quail Commons HOA" }) { ... on Client { id } } }'))
    .data.createClient;
  const [property] = await product.database.admin<{ id: string }>(
    `insert into property (organization_id, client_id, name, time_zone) values ($1, $2, 'Entrance', 'America/Los_Angeles') returning id`,
    [organizationId, clientId],
  );
  const [meter] = await product.database.admin<{ id: string }>(
    `insert into meter (organization_id, property_id, name, unit) values ($1, $2, 'M1', 'CCF') returning id`,
    [organizationId, property!.id],
  );
  const [reading] = await product.database.admin<{ id: string }>(
    'insert into reading (organization_id, meter_id, read_at, register) values ($1, $2, now(), 7) returning id',
    [organizationId, meter!.id],
  );
  await product.database.admin(
    'insert into reading (organization_id, meter_id, read_at, register, replaced_by_id) values ($1, $2, now(), 6, $3)',
    [organizationId, meter!.id, reading!.id],
  );
  return { organizationId, owner };
}

it('shows the doors of the demonstration, which open, to a browser on this machine', async () => {
  const { owner } = await demonstration();
  const { demo } = await page();
  expect(demo).toContainEqual(expect.objectContaining({ email: owner.email, password: DEMO_PASSWORD, role: 'owner' }));
  expect(
    (await product.send(`mutation { signIn(email: "${owner.email}", password: "${DEMO_PASSWORD}") { __typename } }`)).data.signIn
      .__typename,
  ).toBe('SignedIn');
});

/** Sends the page's query with headers of the test's own, Host among them, which fetch does not allow. */
const pageWith = (headers: Record<string, string>): Promise<string> =>
  new Promise((resolve, reject) => {
    const body = JSON.stringify({ query: '{ signInPage { demo { email } } }' });
    const asked = httpRequest(
      `${product.url}/graphql`,
      { method: 'POST', headers: { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body), ...headers } },
      (response) => {
        let text = '';
        response.on('data', (piece) => {
          text += piece;
        });
        response.on('end', () => resolve(text));
      },
    );
    asked.on('error', reject);
    asked.end(body);
  });

it('shows no door through a proxy, nor by a name that points here from elsewhere', async () => {
  expect(await pageWith({ 'x-forwarded-for': '192.0.2.7' })).toBe('{"data":{"signInPage":{"demo":[]}}}\n');
  expect(await pageWith({ forwarded: 'for=192.0.2.7' })).toBe('{"data":{"signInPage":{"demo":[]}}}\n');
  expect(await pageWith({ host: 'rebound.example.test' })).toBe('{"data":{"signInPage":{"demo":[]}}}\n');
  expect(await pageWith({ host: 'localhost:3000' })).toContain('@example.test');
  expect(isFromHere({ headers: { host: 'localhost' }, socket: { remoteAddress: '192.0.2.7' } } as never)).toBe(false);
});

it('clears the demonstration with everything in it and its people, and nothing else', async () => {
  const { owner, organizationId } = await demonstration();
  const real = await product.somebody(await product.organization(), 'owner');
  await product.database.admin(`insert into member (organization_id, person_id, role) values ($1, $2, 'office')`, [
    organizationId,
    real.personId,
  ]);
  expect((await real.send('mutation { clearDemo }')).errors[0]!.extensions.code).toBe('NOT_A_DEMO');
  expect((await owner.send('mutation { clearDemo }')).data.clearDemo).toBe(true);
  expect((await owner.send('{ me { memberId } }')).data.me).toBeNull();
  expect(await product.database.admin('select from organization where is_demo')).toEqual([]);
  for (const table of ['client', 'property', 'meter', 'reading', 'member', 'change'])
    expect(await product.database.admin(`select from ${table} where organization_id = $1`, [organizationId])).toEqual([]);
  expect(await product.database.admin('select from person where id = $1', [owner.personId])).toEqual([]);
  expect((await real.send('{ me { memberId } }')).data.me).toEqual({ memberId: real.memberId });
  expect((await page()).demo).toEqual([]);
});
