import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmodSync, chownSync, existsSync, mkdirSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { StartProblem } from '../start-problem.js';
import { alone } from './alone.js';
import { program, usableBinaries } from './binaries.js';
import { dataFolder } from './data-folder.js';
import { asUnprivileged, engineEnvironment, type Unprivileged, unprivileged } from './unprivileged.js';
import { isAlive, leave, register } from './users.js';

const START_LIMIT_MS = 60_000;

/** A running PostgreSQL of our own. */
export interface EmbeddedEngine {
  /** administrative address, for roles and migrations only */
  readonly url: string;
  readonly pid: number;
  /** true when the server was already running: another process of ours, or one left by a killed process */
  readonly adopted: boolean;
  /** where it keeps its files */
  readonly folder: string;
  /** leaves the server; the last user stops it */
  stop(): Promise<void>;
}

interface Place {
  readonly folder: string;
  readonly cluster: string;
  readonly native: string;
  readonly user: Unprivileged | undefined;
  /** no durability: for tests */
  readonly ephemeral: boolean;
}

const passwordFile = (place: Place): string => path.join(place.folder, 'database.password');

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** Makes the cluster once: UTF-8 with the built-in locale, so that sorting does not depend on the machine. */
function initialise(place: Place): void {
  if (existsSync(path.join(place.cluster, 'PG_VERSION'))) return;
  // A folder without PG_VERSION is what a killed initdb left: nothing was ever kept in it.
  rmSync(place.cluster, { recursive: true, force: true });
  mkdirSync(place.cluster, { mode: 0o700 });
  if (place.user) chownSync(place.cluster, place.user.uid, place.user.gid);
  const password = randomBytes(24).toString('base64url');
  writeFileSync(passwordFile(place), password, { mode: 0o600 });
  chmodSync(passwordFile(place), 0o600);
  if (place.user) chownSync(passwordFile(place), place.user.uid, place.user.gid);
  const args = ['-D', place.cluster, '-U', 'postgres', '-A', 'scram-sha-256', `--pwfile=${passwordFile(place)}`, '-E', 'UTF8'];
  const made = asUnprivileged(place.user, program(place.native, 'initdb'), [
    ...args,
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--locale=C',
    ...(place.ephemeral ? ['-N'] : []),
  ]);
  if (made.status !== 0)
    throw new StartProblem(`The database in ${place.cluster} could not be made: ${(made.stderr || String(made.error)).trim()}`);
}

const urlOf = (place: Place, port: number): string =>
  `postgres://postgres:${readFileSync(passwordFile(place), 'utf8')}@127.0.0.1:${port}/postgres`;

/** Whether a server of this cluster lives, ready or not. */
const isUp = (place: Place): boolean =>
  asUnprivileged(place.user, program(place.native, 'pg_ctl'), ['status', '-D', place.cluster]).status === 0;

/** A server that already runs on this cluster: another process of ours, or the orphan of one that was killed. */
function running(place: Place): { pid: number; port: number } | undefined {
  const file = path.join(place.cluster, 'postmaster.pid');
  if (!existsSync(file)) return undefined;
  const [pid, , , port, , , , state] = readFileSync(file, 'utf8').split('\n');
  return state?.trim() === 'ready' && isAlive(Number(pid)) && port && isUp(place) ? { pid: Number(pid), port: Number(port) } : undefined;
}

function spawnServer(place: Place, port: number): ChildProcess {
  const unsafe = ['-c', 'fsync=off', '-c', 'synchronous_commit=off', '-c', 'full_page_writes=off'];
  const settings = [
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    'max_connections=80',
    'shared_buffers=128MB',
    'max_wal_size=2GB',
    'password_encryption=scram-sha-256',
  ].flatMap((setting) => ['-c', setting]);
  // Its own process group: Ctrl-C in the terminal reaches Node only, which stops the server last.
  return spawn(
    program(place.native, 'postgres'),
    ['-D', place.cluster, '-p', String(port), ...settings, ...(place.ephemeral ? unsafe : [])],
    {
      ...place.user,
      cwd: '/',
      env: engineEnvironment,
      stdio: ['ignore', 'ignore', openSync(path.join(place.folder, 'database.log'), 'w')],
      detached: process.platform !== 'win32',
    },
  );
}

async function launch(place: Place): Promise<{ pid: number; port: number }> {
  const port = await freePort();
  const child = spawnServer(place, port);
  let ended: string | undefined;
  child.once('exit', (code, signal) => {
    ended = String(code ?? signal);
  });
  const limit = Date.now() + START_LIMIT_MS;
  while (Date.now() < limit) {
    const up = ended === undefined ? running(place) : undefined;
    if (up) {
      child.unref();
      return up;
    }
    if (ended !== undefined) break;
    await wait(25);
  }
  const log = readFileSync(path.join(place.folder, 'database.log'), 'utf8').trim().split('\n').slice(-3).join(' ');
  throw new StartProblem(
    `The database in ${place.cluster} did not start${ended === undefined ? ` within ${START_LIMIT_MS / 1000} s` : ''}: ${log}`,
  );
}

/** Waits for a server that is on its way up or down: one whose starter was killed, or one that recovers. */
async function settled(place: Place): Promise<{ pid: number; port: number } | undefined> {
  const limit = Date.now() + START_LIMIT_MS;
  for (;;) {
    const up = running(place);
    if (up || Date.now() > limit || !isUp(place)) return up;
    await wait(50);
  }
}

/**
 * Starts PostgreSQL from the packaged binaries, or adopts the server that already runs on this data folder.
 *
 * As root the server runs as 'postgres' or 'nobody'. Several processes may use it; the last to leave stops it.
 *
 * @param wish.folder DATA_DIR, or undefined for the default place
 * @param wish.ephemeral gives up durability, for tests
 * @throws {StartProblem} when the folder or the server cannot be used
 */
export async function startEmbedded(wish: { folder: string | undefined; ephemeral?: boolean }): Promise<EmbeddedEngine> {
  const user = unprivileged();
  const folder = dataFolder(wish.folder, user);
  const place: Place = {
    folder,
    cluster: path.join(folder, 'postgres'),
    native: usableBinaries(user, folder),
    user,
    ephemeral: wish.ephemeral ?? false,
  };
  const lock = path.join(folder, 'database.lock');
  return alone(lock, async () => {
    initialise(place);
    const found = await settled(place);
    const { pid, port } = found ?? (await launch(place));
    register(folder);
    const stop = () =>
      alone(lock, async () => {
        if (leave(folder)) return;
        const stopped = asUnprivileged(user, program(place.native, 'pg_ctl'), [
          'stop',
          '-D',
          place.cluster,
          '-m',
          'fast',
          '-w',
          '-t',
          '30',
        ]);
        if (stopped.status !== 0 && running(place))
          throw new StartProblem(`The database in ${place.cluster} did not stop: ${stopped.stderr.trim()}`);
      });
    return { url: urlOf(place, port), pid, adopted: found !== undefined, folder, stop };
  });
}
