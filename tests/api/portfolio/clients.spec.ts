import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
});
afterAll(() => product.close());

const create = (who: Somebody, name: string) =>
  who.send(
    'mutation($input: ClientInput!) { createClient(input: $input) { __typename ... on Client { id version name emails } ... on NameTaken { name } } }',
    { input: { name, emails: ['board@example.test'] } },
  );
const change = (who: Somebody, id: string, version: number, name: string) =>
  who.send(
    'mutation($id: ID!, $version: Int!, $input: ClientInput!) { changeClient(id: $id, version: $version, input: $input) { __typename ... on Client { version name } ... on ChangedMeanwhile { version changedBy } } }',
    { id, version, input: { name } },
  );

it('keeps a client, and says when the name is taken', async () => {
  const made = await create(office, 'Quail Commons HOA');
  expect(made.data.createClient).toMatchObject({ __typename: 'Client', version: 1, name: 'Quail Commons HOA' });
  expect((await create(office, 'Quail Commons HOA')).data.createClient).toEqual({ __typename: 'NameTaken', name: 'Quail Commons HOA' });
});

it('changes a client once for each version that was read, and names who was faster', async () => {
  const { id } = (await create(office, 'Old Mill Retail')).data.createClient;
  expect((await change(office, id, 1, 'Old Mill Shops')).data.changeClient).toMatchObject({ __typename: 'Client', version: 2 });
  expect((await change(office, id, 1, 'Old Mill')).data.changeClient).toEqual({
    __typename: 'ChangedMeanwhile',
    version: 2,
    changedBy: 'The office',
  });
});

it('keeps what changed, by whom and when', async () => {
  const { id } = (await create(office, 'Tamarack Row')).data.createClient;
  await change(office, id, 1, 'Tamarack Row Townhomes');
  const kept = await product.database.admin('select deed, before, after, person_id, way from change where thing_id = $1 order by at', [id]);
  expect(kept).toMatchObject([
    { deed: 'create', person_id: office.personId, way: 'screen' },
    { deed: 'change', before: { name: 'Tamarack Row' }, after: { name: 'Tamarack Row Townhomes' } },
  ]);
});

it('is closed to strangers and to those whose role does not include it', async () => {
  expect((await product.send('{ clients { name } }')).errors[0]!.extensions.code).toBe('SIGN_IN_NEEDED');
  const technician = await product.somebody(office.organizationId, 'technician');
  expect((await technician.send('{ clients { name } }')).errors[0]!.extensions).toEqual({
    code: 'NOT_ALLOWED',
    details: { permission: 'read portfolio' },
  });
});
