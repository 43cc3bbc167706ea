import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Catalogue, readCatalogue } from '../../support/planting/catalogue.js';
import { insertOf, plant, type Planted, rowFor } from '../../support/planting/plant.js';
import { cloneDatabase, type TestDatabase } from '../../support/test-database.js';

// The second wall alone: no resolver, no guard, only the application's login and the policies (OWASP ASVS 5.0, 8.4.1).

/** Tables without row-level security, and why. The catalogue's test holds the same list. */
const OPEN = ['person', 'session'];

let database: TestDatabase;
let app: pg.Client;
let catalogue: Catalogue;
let theirs: Planted;
let ours: Planted;
let tables: string[];

beforeAll(async () => {
  database = await cloneDatabase();
  app = new pg.Client({ connectionString: database.appUrl });
  await app.connect();
  catalogue = await readCatalogue(database);
  theirs = await plant(database, 'planted-theirs');
  ours = await plant(database, 'planted-ours');
  tables = catalogue.tables.filter((table) => !OPEN.includes(table));
});
afterAll(async () => {
  await app.end();
  await database.drop();
});

const keyOf = (table: string): string => (table === 'organization' ? 'id' : 'organization_id');

/** Runs statements as our organization and undoes them. */
async function asOurs<T>(work: () => Promise<T>): Promise<T> {
  await app.query('begin');
  try {
    await app.query(`select set_config('app.organization_id', $1, true)`, [ours.organizationId]);
    return await work();
  } finally {
    await app.query('rollback');
  }
}

/** How a statement ended: the number of rows it touched, or the code of its refusal. */
const ended = (sql: string, values: unknown[] = []): Promise<number | string | null> =>
  asOurs(() =>
    app.query(sql, values).then(
      (result) => result.rowCount,
      (problem: pg.DatabaseError) => `${problem.code} ${problem.message}`,
    ),
  );

it('has a row of both organizations in every table, so that nothing below passes by emptiness', async () => {
  expect(tables.length).toBeGreaterThan(30);
  for (const table of tables)
    expect(
      await database.admin(`select count(*)::int as n from "${table}" where ${keyOf(table)} = any($1)`, [
        [ours.organizationId, theirs.organizationId],
      ]),
      table,
    ).toEqual([{ n: 2 }]);
});

it('reads our rows and none of theirs, in every table', async () => {
  for (const table of tables) {
    const rows = await asOurs(
      async () =>
        (
          await app.query<{ owner: string; text: string }>(
            `select ${keyOf(table)} as owner, row_to_json("${table}")::text as text from "${table}"`,
          )
        ).rows,
    );
    expect(
      rows.map((row) => row.owner),
      table,
    ).toEqual([ours.organizationId]);
    expect(rows[0]!.text, table).not.toContain(theirs.marker);
  }
});

it('refuses to insert a row of theirs, in every table', async () => {
  for (const table of tables) {
    const { sql, values } = insertOf(table, rowFor(catalogue, table, { ...theirs, ids: theirs.ids }));
    expect(await ended(sql, values), table).toMatch(/^42501 new row violates row-level security policy/);
  }
});

it('changes none of their rows and gives none of ours away, in every table', async () => {
  for (const table of tables) {
    const key = keyOf(table);
    const touched = await ended(`update "${table}" set ${key} = ${key} where ${key} = $1`, [theirs.organizationId]);
    const given = await ended(`update "${table}" set ${key} = $1 where ${key} = $2`, [theirs.organizationId, ours.organizationId]);
    // Where the application may not change rows at all, the refusal comes earlier.
    const closed = `42501 permission denied for table ${table}`;
    expect([0, closed], table).toContain(touched);
    expect(String(given), table).toMatch(/^42501 (permission denied|new row violates row-level security policy)/);
  }
});

it('deletes none of their rows, in every table', async () => {
  for (const table of tables)
    expect(await ended(`delete from "${table}" where ${keyOf(table)} = $1`, [theirs.organizationId]), table).toBe(0);
});

it('sees nothing of theirs through a join, a count, a function or an error text', async () => {
  const seen = await asOurs(
    async () =>
      (
        await app.query<{ text: string }>(
          `select json_agg(row_to_json(property)) ::text as text from property join meter on meter.property_id = property.id left join reading on reading.meter_id = meter.id`,
        )
      ).rows[0]!.text,
  );
  expect(seen).toContain(ours.marker);
  expect(seen).not.toContain(theirs.marker);
  expect(await ended(`insert into client (organization_id, name) values ($1, $2)`, [ours.organizationId, `${theirs.marker} name`])).toBe(1);
  expect(
    await ended(`insert into property (organization_id, name, client_id, time_zone) values ($1, 'x', $2, 'UTC')`, [
      ours.organizationId,
      theirs.ids['client'],
    ]),
  ).toMatch(/^23503 .*property_client/);
});
