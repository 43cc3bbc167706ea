import { afterAll, beforeAll, expect, it } from 'vitest';
import { aClient, aProperty, type Built, insertRow } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let organizationId: string;

const volume = { litres: null, sdLitres: null, estimatedShare: 0, reason: { code: 'readings-missing', details: {} } };
const gap = { litres: null, sdLitres: null, reason: null, inputs: [], overLitres: null, underLitres: null };
const property = {
  allowed: volume,
  needed: volume,
  programmed: volume,
  metered: volume,
  landscapeGap: gap,
  settingsGap: gap,
  unexplainedGap: gap,
  meteredOverNeeded: gap,
  meteredOverAllowed: gap,
};

/** A property with an account of July that is so many litres and money above need. */
async function above(name: string, litres: number | null, money: number | null, columns: Record<string, unknown> = {}): Promise<Built> {
  const built = await aProperty(product.database, organizationId, { name, ...columns });
  const known =
    litres === null
      ? {}
      : {
          metered_l: 10_000 + litres,
          needed_l: 10_000,
          programmed_l: 10_000,
          above_need_l: litres,
          above_need_sd_l: 100,
          above_need_money: money,
        };
  await insertRow(product.database, 'month_account', {
    organization_id: organizationId,
    property_id: built.id,
    month: '2026-07-01',
    through_on: '2026-07-31',
    ...known,
    detail: {
      account: {
        month: '2026-07',
        firstDate: '2026-07-01',
        throughDate: '2026-07-31',
        daysCovered: 31,
        daysInMonth: 31,
        property,
        meters: [],
        controllers: [],
        zones: [],
        notes: [],
      },
      pricePerLitre: null,
      etoMm: null,
      rainMm: null,
    },
    inputs_version: 'x',
  });
  return built;
}

const names = async (args: string): Promise<string[]> => {
  const { data, errors } = await office.send(`{ portfolio(month: "2026-07"${args}) { rows { property { name } } next total } }`);
  expect(errors).toEqual([]);
  return data.portfolio.rows.map((row: { property: { name: string } }) => row.property.name);
};

beforeAll(async () => {
  product = await startApp();
  organizationId = await product.organization();
  office = await product.somebody(organizationId, 'office');
  const association = await aClient(product.database, organizationId, { name: 'Heron Flats Owners' });
  await above('Dear', 5_000, 90);
  await above('Wet', 9_000, 50, { client_id: association.id });
  await above('Dry', -3_000, -20);
  await above('Not priced', 4_000, null);
  await above('Not read', null, null);
});
afterAll(() => product.close());

it('ranks by money, then by volume where the price is not known, and those that cannot be counted last', async () => {
  expect(await names('')).toEqual(['Dear', 'Wet', 'Dry', 'Not priced', 'Not read']);
  expect(await names(', sort: volume')).toEqual(['Wet', 'Dear', 'Not priced', 'Dry', 'Not read']);
  expect(await names(', sort: name')).toEqual(['Dear', 'Dry', 'Not priced', 'Not read', 'Wet']);
});

it('finds by the name of the client, and takes % and _ as letters', async () => {
  expect(await names(', filter: { text: "heron" }')).toEqual(['Wet']);
  expect(await names(', filter: { text: "%" }')).toEqual([]);
  expect(await names(', filter: { reason: "not counted" }')).toEqual(['Not read']);
});

it('pages by the last property seen', async () => {
  const first = (await office.send('{ portfolio(month: "2026-07", first: 2) { next rows { property { name } } } }')).data.portfolio;
  expect(first.rows).toHaveLength(2);
  const { data } = await office.send(
    'query($after: String) { portfolio(month: "2026-07", first: 2, after: $after) { rows { property { name } } } }',
    { after: first.next },
  );
  expect(data.portfolio.rows.map((row: { property: { name: string } }) => row.property.name)).toEqual(['Dry', 'Not priced']);
});

it('adds up those that surely took more, and has no sum of money when one is not priced', async () => {
  const { data } = await office.send(
    '{ portfolio(month: "2026-07") { sums { properties overProperties aboveNeedLitres aboveNeedMoney underProperties notCounted } } }',
  );
  expect(data.portfolio.sums).toEqual({
    properties: 5,
    overProperties: 3,
    aboveNeedLitres: 18_000,
    aboveNeedMoney: null,
    underProperties: 1,
    notCounted: 1,
  });
});

it('says why a property is not counted', async () => {
  const { data } = await office.send(
    '{ portfolio(month: "2026-07", filter: { text: "Not read" }) { rows { why { code } account { metered { litres reason { code } } } } } }',
  );
  expect(data.portfolio.rows).toEqual([
    { why: { code: 'readings-missing' }, account: { metered: { litres: null, reason: { code: 'readings-missing' } } } },
  ]);
});

it('asks the database as often for one row as for five', async () => {
  const asked = async (first: number): Promise<number> => {
    const logged: string[] = [];
    const runner = product.source.createQueryRunner.bind(product.source);
    product.source.createQueryRunner = (...mode) => {
      const made = runner(...mode);
      const query = made.query.bind(made) as (sql: string, ...rest: unknown[]) => Promise<unknown>;
      made.query = ((sql: string, ...rest: unknown[]) => {
        logged.push(sql);
        return query(sql, ...rest);
      }) as typeof made.query;
      return made;
    };
    await office.send(
      'query($first: Int!) { portfolio(month: "2026-07", first: $first) { rows { property { name client { name } } account { month } topFinding { kind } whoIsOnIt { id } why { code } } } }',
      { first },
    );
    product.source.createQueryRunner = runner;
    return logged.length;
  };
  expect(await asked(5)).toBe(await asked(1));
});

it('counts in a month what people decided of its findings, and the work that was done in it by the organization’s clock', async () => {
  const { database } = product;
  const { id } = await above('Counted', 1_000, 10);
  const own = { organization_id: organizationId, property_id: id };
  const finding = (cause: string, columns: object) =>
    insertRow(database, 'finding', {
      ...own,
      kind: 'unexplained use',
      cause_key: cause,
      state: 'dismissed',
      says: { code: 'unexplained-use', details: {} },
      opened_at: '2026-07-01T12:00:00Z',
      decided_at: '2026-08-02T12:00:00Z',
      ...columns,
    });
  await finding('July, by a person', { from_on: '2026-07-01', until_on: '2026-07-31', decided_by: office.personId });
  await finding('July, by itself', { from_on: '2026-07-01', until_on: '2026-07-31', state: 'resolved' });
  await finding('August, by a person', { from_on: '2026-08-01', until_on: '2026-08-31', decided_by: office.personId });
  const work = { ...own, kind: 'repair', state: 'done', what: 'Valve replaced' };
  // Half past nine in the evening of 31 July in Los Angeles, where the organization is.
  await insertRow(database, 'work_order', { ...work, done_at: '2026-08-01T04:30:00Z' });
  await insertRow(database, 'work_order', { ...work, done_at: '2026-08-09T18:00:00Z' });
  const counts = async (month: string) =>
    (await office.send(`{ monthBoard(month: "${month}") { findingsDecided workDone } }`)).data.monthBoard;
  expect(await counts('2026-06')).toEqual({ findingsDecided: 0, workDone: 0 });
  expect(await counts('2026-07')).toEqual({ findingsDecided: 1, workDone: 1 });
  expect(await counts('2026-08')).toEqual({ findingsDecided: 1, workDone: 1 });
});

it('opens a property at the newest month of which meter and need are known, as the portfolio does', async () => {
  const { id } = await above('Newly begun', 2_000, 20);
  await product.database.admin(
    `insert into month_account (organization_id, property_id, month, through_on, detail, inputs_version)
      select organization_id, property_id, '2026-08-01', '2026-08-01', detail, 'y' from month_account where property_id = $1`,
    [id],
  );
  const { data } = await office.send('query($id: ID!) { portfolio { month } property(id: $id) { account { month } accounts { month } } }', {
    id,
  });
  expect(data).toEqual({
    portfolio: { month: '2026-07' },
    property: { account: { month: '2026-07' }, accounts: [{ month: '2026-07' }, { month: '2026-08' }] },
  });
});
