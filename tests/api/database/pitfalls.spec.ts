import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { APP_ROLE, OWNER_ROLE } from '../../../apps/api/src/platform/database/database-url.js';
import { readCatalogue } from '../../support/planting/catalogue.js';
import { plant, type Planted } from '../../support/planting/plant.js';
import { startApp, type TestApp } from '../../support/test-app.js';

// The ways in which row-level security was seen to fail, one test each, on the database itself.
// What the database promises: PostgreSQL 18 manual, 5.9 Row Security Policies; CREATE POLICY; CREATE FUNCTION (security definer).

let product: TestApp;
let app: pg.Client;
let owner: pg.Client;
let theirs: Planted;
let ours: Planted;

beforeAll(async () => {
  product = await startApp();
  app = new pg.Client({ connectionString: product.database.appUrl });
  owner = new pg.Client({ connectionString: product.database.adminUrl, options: `-c role=${OWNER_ROLE}` });
  await Promise.all([app.connect(), owner.connect()]);
  theirs = await plant(product.database, 'planted-theirs');
  ours = await plant(product.database, 'planted-ours');
});
afterAll(async () => {
  await Promise.all([app.end(), owner.end()]);
  await product.close();
});

async function within<T>(client: pg.Client, organizationId: string, work: () => Promise<T>): Promise<T> {
  await client.query('begin');
  try {
    await client.query(`select set_config('app.organization_id', $1, true)`, [organizationId]);
    return await work();
  } finally {
    await client.query('rollback');
  }
}

const count = async (client: pg.Client, table: string): Promise<number> =>
  (await client.query<{ n: number }>(`select count(*)::int as n from ${table}`)).rows[0]!.n;
const refusal = (work: Promise<unknown>): Promise<pg.DatabaseError> =>
  work.then(
    () => expect.unreachable('it was allowed'),
    (problem: pg.DatabaseError) => problem,
  );

it('1: the application owns no table, is no superuser, bypasses nothing and is no member of the owner', async () => {
  const [role] = await product.database.admin<Record<string, unknown>>(
    'select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, rolreplication from pg_roles where rolname = $1',
    [APP_ROLE],
  );
  expect(role).toEqual({ rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false, rolreplication: false });
  expect(await product.database.admin('select relname from pg_class where relowner = $1::regrole', [APP_ROLE])).toEqual([]);
  expect(await product.database.admin('select roleid::regrole::text from pg_auth_members where member = $1::regrole', [APP_ROLE])).toEqual(
    [],
  );
});

it('2: the policies hold for the owner of the tables too', async () => {
  const [role] = await product.database.admin<Record<string, unknown>>(
    'select rolsuper, rolbypassrls, rolcanlogin from pg_roles where rolname = $1',
    [OWNER_ROLE],
  );
  expect(role).toEqual({ rolsuper: false, rolbypassrls: false, rolcanlogin: false });
  expect(await count(owner, 'client')).toBe(0);
  expect(await within(owner, ours.organizationId, () => count(owner, 'client'))).toBe(1);
});

it('3: without an organization nothing is seen, in any table that belongs to one', async () => {
  const { tables } = await readCatalogue(product.database);
  for (const table of tables) if (!['person', 'session'].includes(table)) expect(await count(app, table), table).toBe(0);
});

it('4: after a transaction the setting is empty, which is nobody, and no error', async () => {
  expect(await within(app, ours.organizationId, () => count(app, 'client'))).toBe(1);
  expect((await app.query(`select current_setting('app.organization_id', true) as left`)).rows).toEqual([{ left: '' }]);
  expect(await count(app, 'client')).toBe(0);
  expect(await count(app, 'organization')).toBe(0);
});

it('5: no pooled connection keeps an organization or a person from one request to the next', async () => {
  const office = await product.somebody(ours.organizationId, 'office');
  const answers = await Promise.all(
    Array.from({ length: 24 }, (_, turn) =>
      office.send(turn % 3 ? '{ clients { id } }' : 'mutation { retireClient(id: "no uuid", version: 1) { __typename } }'),
    ),
  );
  expect(answers.filter((answer) => answer.errors.length).length).toBe(8);
  const left = await Promise.all(
    Array.from({ length: 16 }, () =>
      product.source.query(
        `select pg_backend_pid() as pid, coalesce(current_setting('app.organization_id', true), '') as organization, coalesce(current_setting('app.person_id', true), '') as person, pg_sleep(0.05)`,
      ),
    ),
  );
  const connections = left.flat() as { pid: number; organization: string; person: string }[];
  expect(new Set(connections.map((one) => one.pid)).size).toBeGreaterThan(4);
  for (const { organization, person } of connections) expect([organization, person]).toEqual(['', '']);
});

it('6: there is no view that could look past the policies', async () => {
  const views = await product.database.admin<{ name: string; options: string[] | null }>(
    `select relname as name, reloptions as options from pg_class where relnamespace = 'public'::regnamespace and relkind in ('v', 'm')`,
  );
  expect(views.filter((view) => !view.options?.includes('security_invoker=true'))).toEqual([]);
});

it("7: a row cannot point at another organization's, for the key carries the organization", async () => {
  const problem = await within(app, ours.organizationId, () =>
    refusal(
      app.query(`insert into property (organization_id, client_id, name, time_zone) values ($1, $2, 'x', 'UTC')`, [
        ours.organizationId,
        theirs.ids['client'],
      ]),
    ),
  );
  expect([problem.code, problem.constraint]).toEqual(['23503', 'property_client']);
  const absent = await within(app, ours.organizationId, () =>
    refusal(
      app.query(`insert into property (organization_id, client_id, name, time_zone) values ($1, gen_random_uuid(), 'x', 'UTC')`, [
        ours.organizationId,
      ]),
    ),
  );
  expect([absent.code, absent.constraint]).toEqual(['23503', 'property_client']);
});

it('8: a name that another organization uses is free for us', async () => {
  const [their] = await product.database.admin<{ name: string }>('select name from client where organization_id = $1', [
    theirs.organizationId,
  ]);
  const made = await within(app, ours.organizationId, () =>
    app.query('insert into client (organization_id, name) values ($1, $2)', [ours.organizationId, their!.name]),
  );
  expect(made.rowCount).toBe(1);
});

it('9: an insert into another organization is refused', async () => {
  const problem = await within(app, ours.organizationId, () =>
    refusal(app.query(`insert into client (organization_id, name) values ($1, 'x')`, [theirs.organizationId])),
  );
  expect(problem.code).toBe('42501');
});

it('10: an update reaches no row of another organization, and cannot move one there', async () => {
  expect(
    (
      await within(app, ours.organizationId, () =>
        app.query(`update client set name = 'x' where organization_id = $1`, [theirs.organizationId]),
      )
    ).rowCount,
  ).toBe(0);
  const problem = await within(app, ours.organizationId, () =>
    refusal(app.query('update client set organization_id = $1', [theirs.organizationId])),
  );
  expect(problem.code).toBe('42501');
});

/** Every function that runs as its owner, and what it tells or does beyond one organization. */
const DEFINERS: Readonly<Record<string, string>> = {
  'clear_demo()': 'deletes demonstrations, from within one only',
  'demo_doors()': 'names the members of demonstrations, never others',
  'demo_was_cleared()': 'one boolean: whether the demonstration was cleared here',
  'enqueue_job(task text, job_id uuid)': 'puts work of the organization that is set into the queue',
  'enqueue_job_at(task text, job_id uuid)': 'the same, to be worked not before an instant',
  'server_is_empty()': 'one boolean: whether there is no organization',
};

it('11: the functions that run as their owner are these, owned by a role that the policies bind, with a fixed search path, closed to the public', async () => {
  const found = await product.database.admin<{
    name: string;
    owner: string;
    config: string[];
    public: boolean;
  }>(`select proname || '(' || pg_get_function_arguments(oid) || ')' as name, proowner::regrole::text as owner, proconfig as config, coalesce(array_to_string(proacl, ' ') ~ '(^| )=X/', true) as public
    from pg_proc where pronamespace = 'public'::regnamespace and prosecdef order by proname`);
  const argumentsOf = (name: string): string => name.replace(/\(.*task.*\)/, '(task text, job_id uuid)');
  expect(found.map((one) => argumentsOf(one.name))).toEqual(Object.keys(DEFINERS));
  for (const { name, owner: owns, config, public: open } of found)
    expect([name, owns, config, open]).toEqual([name, OWNER_ROLE, ['search_path=pg_catalog'], false]);
});

it('12: none of those functions tells or touches what is not a demonstration', async () => {
  await product.database.admin('update organization set is_demo = true where id = $1', [theirs.organizationId]);
  const doors = await within(app, ours.organizationId, async () => (await app.query<{ email: string }>('select * from demo_doors()')).rows);
  expect(doors.map((door) => door.email)).toEqual([`${theirs.marker}@example.test`]);
  // Afterwards the transaction is again ours alone.
  expect(
    await within(app, ours.organizationId, async () => [
      await app.query('select * from demo_doors()').then(() => null),
      (await app.query('select id from organization')).rows,
    ]),
  ).toEqual([null, [{ id: ours.organizationId }]]);
  expect((await within(app, ours.organizationId, () => refusal(app.query('select clear_demo()')))).code).toBe('42501');
  expect((await refusal(app.query('select clear_demo()'))).code).toBe('42501');
  expect((await refusal(app.query(`select enqueue_job('background-job', gen_random_uuid())`))).code).toBe('42501');
  expect((await refusal(app.query(`select enqueue_job_at('background-job', gen_random_uuid(), now())`))).code).toBe('42501');
  expect((await app.query('select server_is_empty() as empty')).rows).toEqual([{ empty: false }]);
  await product.database.admin('update organization set is_demo = false where id = $1', [theirs.organizationId]);
});

it('13: truncate, which no policy covers, is granted on no table, nor is anything else beyond the four', async () => {
  for (const table of (await readCatalogue(product.database)).tables)
    expect((await refusal(app.query(`truncate "${table}" cascade`))).code, table).toBe('42501');
  expect(
    await product.database.admin(
      `select distinct privilege_type from information_schema.role_table_grants where grantee = $1 and privilege_type not in ('SELECT', 'INSERT', 'UPDATE', 'DELETE')`,
      [APP_ROLE],
    ),
  ).toEqual([]);
});

it("the job queue's own tables, which have no policies, are closed to the application", async () => {
  expect(await product.database.admin(`select has_schema_privilege($1, 'graphile_worker', 'usage') as open`, [APP_ROLE])).toEqual([
    { open: false },
  ]);
  expect(
    await product.database.admin(
      `select nspname from pg_namespace where nspname !~ '^pg_' and nspname not in ('public', 'graphile_worker', 'information_schema')`,
    ),
  ).toEqual([]);
});
