import { chmodSync, chownSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { isAlive as lives } from '../../../apps/api/src/platform/database/embedded/users.js';
import { type EngineChild, EngineYard } from '../../support/engine-child.js';

// Processes of their own, as `npm start` makes them, on data folders of their own; some of them are killed.

const NOBODY = 65534;
const isRoot = process.getuid?.() === 0;

let yard: EngineYard;
const children: EngineChild[] = [];

beforeAll(() => {
  yard = new EngineYard();
});
afterAll(async () => {
  for (const child of children) {
    if (child.process.exitCode === null && child.process.signalCode === null) await child.stop();
  }
  yard.clear();
});

async function start(folder: string, uid?: number): Promise<EngineChild> {
  const child = await yard.start(folder, uid);
  children.push(child);
  return child;
}

async function query<Row extends pg.QueryResultRow>(url: string, sql: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Row>(sql)).rows;
  } finally {
    await client.end();
  }
}

const until = async (what: () => boolean): Promise<void> => {
  for (let turn = 0; turn < 200 && !what(); turn += 1) await wait(50);
};

/** Who has ended is there until their parent has taken note of it: where that was killed, whoever stands in for it, in its own time. */
const ended = async (pid: number): Promise<void> => {
  await until(() => !lives(pid));
  expect(lives(pid)).toBe(false);
};

it('makes a database in a folder that was not there, sorted alike on every machine, open on this machine only', async () => {
  const { told, stop } = await start(yard.folder('fresh'));
  expect(told).toMatchObject({ adopted: false, folder: yard.folder('fresh') });
  expect(new URL(told.url).hostname).toBe('127.0.0.1');
  const [set] = await query<Record<string, string>>(
    told.url,
    `select current_setting('listen_addresses') as listens, current_setting('server_encoding') as encoding, current_setting('fsync') as fsync, (select datlocale from pg_database where datname = 'postgres') as locale`,
  );
  expect(set).toEqual({ listens: '127.0.0.1', encoding: 'UTF8', fsync: 'on', locale: 'C.UTF-8' });
  await stop();
  await ended(told.pid);
});

it('keeps its password for its own account', async () => {
  const { told, stop } = await start(yard.folder('password'));
  expect(statSync(path.join(told.folder, 'database.password')).mode & 0o077).toBe(0);
  const wrong = new URL(told.url);
  wrong.password = 'guess';
  await expect(query(wrong.toString(), 'select 1')).rejects.toMatchObject({ code: '28P01' });
  await stop();
});

it('adopts the server after the process was killed, and nothing that was committed is lost', async () => {
  const first = await start(yard.folder('killed'));
  const client = new pg.Client({ connectionString: first.told.url });
  await client.connect();
  await client.query('create table kept (n integer primary key)');
  let committed = 0;
  let going = true;
  const writing = (async () => {
    while (going) {
      await client.query('insert into kept values ($1)', [committed]);
      committed += 1;
    }
  })();
  await wait(200);
  await first.kill();
  const second = await start(yard.folder('killed'));
  going = false;
  await writing;
  await client.end();
  expect(second.told).toMatchObject({ adopted: true, pid: first.told.pid, url: first.told.url });
  expect(committed).toBeGreaterThan(10);
  expect(await query(second.told.url, 'select count(*)::int as n from kept')).toEqual([{ n: committed }]);
  await second.stop();
  await ended(first.told.pid);
});

it('recovers when the server itself was killed: what was committed is there, what was not is not', async () => {
  const first = await start(yard.folder('crashed'));
  await query(first.told.url, 'create table kept as select generate_series(1, 1000) as n');
  const open = new pg.Client({ connectionString: first.told.url });
  open.on('error', () => undefined);
  await open.connect();
  await open.query('begin; insert into kept values (-1)');
  process.kill(first.told.pid, 'SIGKILL');
  await first.kill();
  await until(() => !lives(first.told.pid));
  const second = await start(yard.folder('crashed'));
  expect(second.told).toMatchObject({ adopted: false });
  expect(await query(second.told.url, 'select count(*)::int as n, min(n) as least from kept')).toEqual([{ n: 1000, least: 1 }]);
  await second.stop();
});

it('is shared by two processes that start at once: one makes it, the last to leave stops it', async () => {
  const [one, other] = await Promise.all([start(yard.folder('shared')), start(yard.folder('shared'))]);
  expect([one.told.adopted, other.told.adopted].sort()).toEqual([false, true]);
  expect(one.told.pid).toBe(other.told.pid);
  await one.stop();
  expect(lives(one.told.pid)).toBe(true);
  expect(await query(other.told.url, 'select 1 as n')).toEqual([{ n: 1 }]);
  await other.stop();
  await ended(one.told.pid);
});

it('is not held up by the lock of a process that was killed', async () => {
  const folder = yard.folder('locked');
  mkdirSync(folder, { recursive: true });
  const dead = await start(yard.folder('other'));
  await dead.kill();
  writeFileSync(path.join(folder, 'database.lock'), String(dead.process.pid));
  const [one, other] = await Promise.all([start(folder), start(folder)]);
  expect(one.told.pid).toBe(other.told.pid);
  await Promise.all([one.stop(), other.stop()]);
  await ended(one.told.pid);
  expect(readdirSync(folder).filter((name) => name.startsWith('database.lock'))).toEqual([]);
  await (await start(yard.folder('other'))).stop();
});

it('says what to set when a file is in the way, and leaves the file alone', async () => {
  const file = path.join(yard.home, 'in-the-way');
  writeFileSync(file, 'mine');
  const before = statSync(file);
  const { told } = await start(file);
  expect(told).toEqual({
    name: 'StartProblem',
    message: `The data folder ${file} cannot be made or written (EEXIST). Set DATA_DIR to a folder that you may write, or DATABASE_URL to a PostgreSQL server.`,
  });
  expect([statSync(file).uid, statSync(file).size]).toEqual([before.uid, 4]);
  expect((await start(path.join(file, 'below'))).told.message).toMatch(
    /^The data folder .*in-the-way\/below cannot be made or written \(ENOTDIR\)\. Set DATA_DIR/,
  );
});

it('does not take over a folder with things of somebody else in it', async () => {
  if (!isRoot) return;
  const folder = yard.folder('home');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'letter.txt'), 'dear');
  const { stop, told } = await start(folder);
  expect([statSync(folder).uid, statSync(path.join(folder, 'letter.txt')).uid]).toEqual([0, 0]);
  expect(await query(told.url, 'select 1 as n')).toEqual([{ n: 1 }]);
  await stop();
});

it('says what to set when the folder may not be written', async () => {
  const folder = yard.folder('read-only');
  mkdirSync(folder, { recursive: true });
  chmodSync(folder, 0o555);
  // For root nothing is read-only: there another account tries.
  const { told } = await start(folder, isRoot ? NOBODY : undefined);
  expect(told).toEqual({
    name: 'StartProblem',
    message: `The data folder ${folder} cannot be made or written (EACCES). Set DATA_DIR to a folder that you may write, or DATABASE_URL to a PostgreSQL server.`,
  });
});

it('as root, runs the server as another account, and says when that account cannot enter the folder', async () => {
  if (!isRoot) return;
  const { told, stop } = await start(yard.folder('dropped'));
  expect(statSync(`/proc/${told.pid}`).uid).not.toBe(0);
  expect(statSync(path.join(told.folder, 'postgres')).uid).toBe(statSync(`/proc/${told.pid}`).uid);
  await stop();
  const closed = path.join(yard.home, 'closed');
  mkdirSync(closed, { mode: 0o700 });
  expect((await start(path.join(closed, 'data'))).told.message).toMatch(
    /cannot be entered by the account that runs the database \(uid \d+\): a folder above it is private to root\. Set DATA_DIR to a folder such as/,
  );
});

it('as anybody else, runs the server as that account', async () => {
  const folder = yard.folder('anybody');
  mkdirSync(folder, { recursive: true });
  if (isRoot) chownSync(folder, NOBODY, NOBODY);
  const { told, stop } = await start(folder, isRoot ? NOBODY : undefined);
  expect(told).toMatchObject({ adopted: false, folder });
  expect(statSync(path.join(folder, 'postgres')).uid).toBe(isRoot ? NOBODY : process.getuid?.());
  expect(await query(told.url, 'select 1 as n')).toEqual([{ n: 1 }]);
  await stop();
  await ended(told.pid);
});
