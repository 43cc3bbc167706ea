import { afterAll, beforeAll, expect, it } from 'vitest';
import { OWNER_ROLE } from '../../../apps/api/src/platform/database/database-url.js';
import { cloneDatabase, type TestDatabase } from '../../support/test-database.js';

/** Tables that belong to no organization, each with its reason. */
const OF_NO_ORGANIZATION: Readonly<Record<string, string>> = {
  demo_cleared: 'one fact about the server: not to load the demonstration again; not granted to the application',
  migrations: 'the list of migrations that ran; the application may not read it',
  organization: 'is the organization: its own id is its key, under the same policy',
  person: 'a person may be a member of several organizations, and is looked up before one is known',
  session: 'is looked up by its token before an organization is known; holds a hash only',
};

/** Unique keys that span organizations, each with its reason. */
const GLOBAL_KEYS: Readonly<Record<string, string>> = {
  PK_8c82d7f526340ab734260ea46be: 'the list of migrations',
  organization_pkey: 'random',
  organization_name_once: 'the command line names an organization by its name',
  person_pkey: 'random',
  person_email_once: 'a person signs in with it; inviting does not tell whether it is known',
  session_pkey: 'the hash of a random token',
};

const MINE = "(organization_id = (NULLIF(current_setting('app.organization_id'::text, true), ''::text))::uuid)";

interface Table {
  readonly name: string;
  readonly enabled: boolean;
  readonly forced: boolean;
  readonly owner: string;
  readonly hasOrganization: boolean;
}

let database: TestDatabase;
let tables: Table[];

beforeAll(async () => {
  database = await cloneDatabase();
  tables =
    await database.admin<Table>(`select relname as name, relrowsecurity as enabled, relforcerowsecurity as forced, relowner::regrole::text as owner,
    exists (select from pg_attribute where attrelid = pg_class.oid and attname = 'organization_id' and attnotnull and not attisdropped) as "hasOrganization"
    from pg_class where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') order by relname`);
});
afterAll(() => database.drop());

it('every table belongs to an organization, or stands in the list with its reason', () => {
  const without = tables.filter((table) => !table.hasOrganization || table.name in OF_NO_ORGANIZATION).map((table) => table.name);
  expect(without).toEqual(Object.keys(OF_NO_ORGANIZATION));
});

it('every table that belongs to an organization has row-level security, enabled and forced, and is owned by the owner', () => {
  for (const { name, enabled, forced, owner } of tables) {
    if (name in OF_NO_ORGANIZATION && name !== 'organization') continue;
    expect([name, enabled, forced, owner]).toEqual([name, true, true, OWNER_ROLE]);
  }
});

it('every such table has the one policy, one bare equality for reading and for writing', async () => {
  const policies = await database.admin<{ table: string; name: string; qual: string; check: string; command: string; roles: string }>(
    `select tablename as table, policyname as name, qual, with_check as check, cmd as command, array_to_string(roles, ',') as roles from pg_policies where schemaname = 'public' order by 1, 2`,
  );
  for (const { name } of tables) {
    if (name in OF_NO_ORGANIZATION) continue;
    expect(
      policies.filter((one) => one.table === name && one.name === 'organization_only'),
      name,
    ).toEqual([{ table: name, name: 'organization_only', qual: MINE, check: MINE, command: 'ALL', roles: 'public' }]);
  }
  // Beside it only these, each for reading only.
  const others = policies
    .filter((one) => one.name !== 'organization_only')
    .map(({ table, name, command, roles }) => [table, name, command, roles]);
  expect(others).toEqual([
    ['member', 'own_memberships', 'SELECT', 'public'],
    ['organization', 'own_organizations', 'SELECT', 'public'],
    ['organization', 'seen_by_functions', 'SELECT', OWNER_ROLE],
  ]);
});

it('every unique key carries the organization, or stands in the list with its reason', async () => {
  const keys = await database.admin<{
    name: string;
  }>(`select cls.relname as name from pg_index idx join pg_class cls on cls.oid = idx.indexrelid
    where cls.relnamespace = 'public'::regnamespace and idx.indisunique
    and not exists (select from pg_attribute att where att.attrelid = idx.indrelid and att.attnum = any(idx.indkey) and att.attname = 'organization_id') order by 1`);
  expect(keys.map((key) => key.name).sort()).toEqual(Object.keys(GLOBAL_KEYS).sort());
});

it('every pointer between rows of organizations carries the organization', async () => {
  const pointers = await database.admin<{
    name: string;
    to: string;
    columns: string[];
  }>(`select conname as name, confrelid::regclass::text as to, array(select attname::text from pg_attribute where attrelid = conrelid and attnum = any(conkey)) as columns
    from pg_constraint where contype = 'f' and connamespace = 'public'::regnamespace`);
  const across = pointers.filter((pointer) => !(pointer.to in OF_NO_ORGANIZATION) && !pointer.columns.includes('organization_id'));
  expect(across).toEqual([]);
  expect(pointers.length).toBeGreaterThan(60);
});
