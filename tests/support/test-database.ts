import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { applicationUrl } from '../../apps/api/src/platform/database/database-url.js';
import { TEMPLATE } from './database.global.js';

/** A database of its own for one test file. */
export interface TestDatabase {
  readonly adminUrl: string;
  readonly appUrl: string;
  /** as the administrator, whom no policy binds */
  admin<Row extends pg.QueryResultRow>(sql: string, parameters?: unknown[]): Promise<Row[]>;
  drop(): Promise<void>;
}

async function onServer(sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: inject('adminUrl') });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}

/** Ends a pool and waits until its connections are gone: `end` alone does not, and a connection that is still closing would be cut off. */
async function closed(pool: pg.Pool): Promise<void> {
  let open = pool.totalCount;
  const gone = new Promise<void>((resolve) => {
    pool.on('remove', () => {
      open -= 1;
      if (open === 0) resolve();
    });
  });
  if (open === 0) return pool.end();
  await pool.end();
  await gone;
}

/** Clones the migrated template. */
export async function cloneDatabase(): Promise<TestDatabase> {
  const name = `test_${randomBytes(6).toString('hex')}`;
  await onServer(`create database ${name} template ${TEMPLATE} strategy file_copy`);
  const url = new URL(inject('adminUrl'));
  url.pathname = `/${name}`;
  const pool = new pg.Pool({ connectionString: url.toString(), max: 2 });
  return {
    adminUrl: url.toString(),
    appUrl: applicationUrl(url.toString()),
    admin: async <Row extends pg.QueryResultRow>(sql: string, parameters: unknown[] = []) => (await pool.query<Row>(sql, parameters)).rows,
    drop: async () => {
      await closed(pool);
      await onServer(`drop database ${name} with (force)`);
    },
  };
}
