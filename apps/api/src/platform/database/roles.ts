import pg from 'pg';
import { APP_ROLE, OWNER_ROLE } from './database-url.js';
import { StartProblem } from './start-problem.js';

const LOCK = 7_155_201;

async function haveRole(client: pg.Client, name: string): Promise<boolean> {
  return (await client.query('select from pg_roles where rolname = $1', [name])).rowCount === 1;
}

/** The application's login; what only a superuser may say of a role is said when it is made, and looked at when it is there. */
async function makeLogin(client: pg.Client, password: string): Promise<void> {
  if (!(await haveRole(client, APP_ROLE))) {
    await client.query(`create role ${APP_ROLE} login password ${client.escapeLiteral(password)}`);
    return;
  }
  const { rows } = await client.query<{ unsafe: boolean }>('select rolsuper or rolbypassrls as unsafe from pg_roles where rolname = $1', [
    APP_ROLE,
  ]);
  if (rows[0]!.unsafe)
    throw new StartProblem(
      `The role ${APP_ROLE} is a superuser or bypasses row-level security. Take that away: alter role ${APP_ROLE} nosuperuser nobypassrls.`,
    );
  await client.query(`alter role ${APP_ROLE} login password ${client.escapeLiteral(password)}`);
}

async function makeRoles(client: pg.Client, appPassword: string): Promise<void> {
  if (!(await haveRole(client, OWNER_ROLE))) await client.query(`create role ${OWNER_ROLE} nologin`);
  await makeLogin(client, appPassword);
  await client.query(`grant ${OWNER_ROLE} to current_user`);
  const { rows } = await client.query<{ name: string }>('select quote_ident(current_database()) as name');
  await client.query(`grant create, connect, temporary on database ${rows[0]!.name} to ${OWNER_ROLE}`);
  await client.query(`grant connect, temporary on database ${rows[0]!.name} to ${APP_ROLE}`);
  await client.query(`grant usage, create on schema public to ${OWNER_ROLE}`);
  await client.query(`grant usage on schema public to ${APP_ROLE}`);
}

/**
 * Makes the two roles: one that owns the tables and cannot log in, one that logs in and owns nothing.
 *
 * @throws {StartProblem} when this login may not make roles, with the statements to run by hand
 */
export async function prepareRoles(adminUrl: string, appUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: adminUrl });
  try {
    await client.connect();
  } catch (problem) {
    throw new StartProblem(
      `No connection to the database at ${new URL(adminUrl).host}: ${(problem as Error).message}. Check DATABASE_URL and that the server runs.`,
    );
  }
  try {
    await client.query('select pg_advisory_lock($1)', [LOCK]);
    const password = decodeURIComponent(new URL(appUrl).password);
    await makeRoles(client, password);
  } catch (problem) {
    if ((problem as pg.DatabaseError).code !== '42501') throw problem;
    throw new StartProblem(
      `The login of DATABASE_URL may not make roles. Run once as an administrator: create role ${OWNER_ROLE} nologin; create role ${APP_ROLE} login password '…'; grant ${OWNER_ROLE} to "${new URL(adminUrl).username}"; ` +
        `then give CREATEROLE to the login, or set DATABASE_APP_URL to the address of ${APP_ROLE}. (${(problem as Error).message})`,
    );
  } finally {
    await client.end();
  }
}
