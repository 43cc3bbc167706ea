import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let owner: Somebody;

beforeAll(async () => {
  product = await startApp();
  owner = await product.somebody(await product.organization('Sagebrush Grounds'), 'owner');
});
afterAll(() => product.close());

const INPUT = { name: 'Sagebrush Grounds', units: 'us', language: 'en', leastConfidence: 0.9, leastLitres: 5000, leastMoney: 10 };
const change = (input: object, version = 1) =>
  owner.send(
    'mutation($version: Int!, $input: OrganizationInput!) { changeOrganization(version: $version, input: $input) { version leastLitres } }',
    { version, input: { ...INPUT, ...input } },
  );

it.each([
  ['a confidence of even chances', { leastConfidence: 0.4 }, 'leastConfidence'],
  ['a confidence of certainty', { leastConfidence: 1 }, 'leastConfidence'],
  ['a volume below nothing', { leastLitres: -1 }, 'leastLitres'],
  ['more water than there is', { leastLitres: 1e12 }, 'leastLitres'],
  ['a sum below nothing', { leastMoney: -0.01 }, 'leastMoney'],
  ['no name', { name: '  ' }, 'name'],
])('refuses %s by the name of the field', async (_, input, field) => {
  const { errors, data } = await change(input);
  expect(errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field } });
  expect(data).toBeNull();
});

it('refuses a query that nests too deep by its own code', async () => {
  const deep = 'client { properties { '.repeat(7) + 'id' + ' } }'.repeat(7);
  const { errors } = await owner.send(`{ properties { ${deep} } }`);
  expect(errors[0]!.extensions).toMatchObject({ code: 'QUERY_TOO_LARGE', details: { found: 16, most: 12, what: 'levels' } });
});

it.each(['1e400', '-1e999', '1'.repeat(400)])('refuses %s, which no double can hold, before anything runs', async (number) => {
  const { errors } = await owner.send(
    `mutation { changeOrganization(version: 1, input: { name: "S", units: us, language: en, leastConfidence: 0.9, leastLitres: ${number}, leastMoney: 1 }) { version } }`,
  );
  expect(errors[0]!.extensions.code).toBe('VALUE_REFUSED');
});

it('judges all accounts again when what opens a finding has changed', async () => {
  expect((await change({ leastLitres: 6000 })).data.changeOrganization).toEqual({ version: 2, leastLitres: 6000 });
  const jobs = await product.database.admin<{ kind: string }>('select kind from background_job where organization_id = $1', [
    owner.organizationId,
  ]);
  expect(jobs).toEqual([{ kind: 'compute accounts' }]);
  await product.drain();
});
