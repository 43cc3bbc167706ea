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
      await pool.end();
      await onServer(`drop database ${name} with (force)`);
    },
  };
}
