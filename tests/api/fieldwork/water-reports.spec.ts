import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, codeOf, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const REPORT =
  '__typename ... on WaterReport { id version clientId fromOn untilOn state note sentAt } ... on NameTaken { name } ... on ChangedMeanwhile { version }';
const create = (input: Record<string, unknown>) =>
  day.office.send(`mutation($input: WaterReportInput!) { createWaterReport(input: $input) { ${REPORT} } }`, {
    input: { clientId: day.clientId, ...input },
  });
const list = async (who: FieldDay['office']) => (await who.send('{ waterReports { id state } }')).data.waterReports;

it('keeps a draft for a client and period, once', async () => {
  const july = { fromOn: '2026-07-01', untilOn: '2026-07-31' };
  const made = (await create({ ...july, note: ' Dry month ' })).data.createWaterReport;
  expect(made).toMatchObject({
    __typename: 'WaterReport',
    version: 1,
    clientId: day.clientId,
    ...july,
    state: 'draft',
    note: 'Dry month',
    sentAt: null,
  });
  expect((await create(july)).data.createWaterReport).toEqual({ __typename: 'NameTaken', name: '2026-07-01 to 2026-07-31' });
  const change = (version: number, note: string) =>
    day.office.send(
      `mutation($id: ID!, $version: Int!, $input: WaterReportInput!) { changeWaterReport(id: $id, version: $version, input: $input) { ${REPORT} } }`,
      { id: made.id, version, input: { clientId: day.clientId, ...july, note } },
    );
  expect((await change(1, 'A dry month')).data.changeWaterReport).toMatchObject({ version: 2, note: 'A dry month' });
  expect((await change(1, 'Wet')).data.changeWaterReport).toEqual({ __typename: 'ChangedMeanwhile', version: 2 });
  await day.office.send('mutation($id: ID!) { retireWaterReport(id: $id, version: 2) { __typename } }', { id: made.id });
  expect(await list(day.office)).toEqual([]);
});

it('refuses a period that ends before it begins, and a client that is not there', async () => {
  expect((await create({ fromOn: '2026-07-01', untilOn: '2026-06-30' })).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'untilOn' },
  });
  expect((await create({ clientId: day.crewId, fromOn: '2026-07-01', untilOn: '2026-07-31' })).errors[0]!.extensions).toEqual({
    code: 'NOT_FOUND',
    details: { thing: 'client', id: day.crewId },
  });
});

it('shows a client what was sent to them, and nothing else', async () => {
  const draft = (await create({ fromOn: '2026-05-01', untilOn: '2026-05-31' })).data.createWaterReport;
  const sent = (await create({ fromOn: '2026-06-01', untilOn: '2026-06-30' })).data.createWaterReport;
  await product.database.admin(`update water_report set state = 'sent', sent_at = now() where id = $1`, [sent.id]);
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  expect(await list(client)).toEqual([{ id: sent.id, state: 'sent' }]);
  expect((await list(day.owner)).map(({ id }: { id: string }) => id)).toEqual([sent.id, draft.id]);
  expect(codeOf(await day.lead.send('{ waterReports { id } }'))).toBe('NOT_ALLOWED');
  expect(
    codeOf(
      await client.send(
        'mutation($client: ID!) { createWaterReport(input: { clientId: $client, fromOn: "2026-01-01", untilOn: "2026-01-31" }) { __typename } }',
        { client: day.clientId },
      ),
    ),
  ).toBe('NOT_ALLOWED');
});
