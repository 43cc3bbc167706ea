import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { findDatabase } from '../../apps/api/src/platform/database/database-url.js';

const top = path.resolve(import.meta.dirname, '../..');
const dist = path.join(top, 'apps/api/dist');
const START_LIMIT_MS = 120_000;

/** The product as a person starts it: its own process, its own database, a folder of its own. */
export interface Product {
  readonly url: string;
  readonly folder: string;
  /** runs one of the command lines against the same database */
  command(...args: string[]): string;
  /** as the administrator: to move an organization's day */
  sql<Row extends pg.QueryResultRow>(statement: string, parameters?: unknown[]): Promise<Row[]>;
  /** ends the process as a person would, with Ctrl-C */
  stop(): Promise<void>;
}

function address(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const limit = setTimeout(() => reject(new Error(`no address within ${START_LIMIT_MS} ms:\n${said}`)), START_LIMIT_MS);
    const listen = (piece: Buffer): void => {
      said += piece.toString();
      const found = /http:\/\/localhost:\d+/.exec(said);
      if (!found) return;
      clearTimeout(limit);
      resolve(found[0]);
    };
    child.stdout!.on('data', listen);
    child.stderr!.on('data', listen);
    child.once('exit', (code) => reject(new Error(`the product ended with ${code}:\n${said}`)));
  });
}

/** Starts the built product on a port and in a folder of its own, with the demonstration or without. */
export async function startProduct(wish: { demo: boolean }): Promise<Product> {
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-e2e-'));
  // The database's own account must be able to enter it.
  chmodSync(folder, 0o755);
  const { DATABASE_URL: _, ...inherited } = process.env;
  const environment = { ...inherited, DATA_DIR: path.join(folder, 'data'), PORT: '0', RILLBOOK_DEMO: wish.demo ? 'yes' : 'no' };
  const child = spawn(process.execPath, ['--enable-source-maps', path.join(dist, 'main.js')], {
    env: environment,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const url = await address(child);
  return {
    url,
    folder,
    command: (...args) =>
      execFileSync(process.execPath, ['--enable-source-maps', path.join(dist, 'cli.js'), ...args], { env: environment, encoding: 'utf8' }),
    async sql(statement, parameters = []) {
      const database = await findDatabase(environment);
      const client = new pg.Client({ connectionString: database.adminUrl });
      await client.connect();
      try {
        return (await client.query(statement, parameters)).rows;
      } finally {
        await client.end();
        await database.close();
      }
    },
    async stop() {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
