import { Logger, runMigrations } from 'graphile-worker';
import pg from 'pg';
import { OWNER_ROLE } from './database-url.js';
import { ownerDataSource } from './data-source.js';
import { prepareRoles } from './roles.js';

/** The queue's own log goes nowhere while it migrates: a failure rejects. */
export const silentLogger = new Logger(() => () => undefined);

/** A pool that works as the owner of the tables; the job queue's plumbing runs on it. */
export function ownerPool(adminUrl: string, max = 4): pg.Pool {
  const pool = new pg.Pool({ connectionString: adminUrl, max, options: `-c role=${OWNER_ROLE}` });
  // An idle connection that breaks is replaced by the pool; whoever uses one in that moment gets the error.
  const replaced = (): void => undefined;
  pool.on('error', replaced);
  pool.on('connect', (client) => client.on('error', replaced));
  return pool;
}

/**
 * Brings a database to this version of the product: roles, the queue's schema, our migrations.
 *
 * @returns the names of the migrations that ran now
 */
export async function migrate(adminUrl: string, appUrl: string): Promise<string[]> {
  await prepareRoles(adminUrl, appUrl);
  const pool = ownerPool(adminUrl, 1);
  try {
    await runMigrations({ pgPool: pool, logger: silentLogger });
  } finally {
    await pool.end();
  }
  const source = await ownerDataSource(adminUrl).initialize();
  try {
    return (await source.runMigrations({ transaction: 'each' })).map((migration) => migration.name);
  } finally {
    await source.destroy();
  }
}
