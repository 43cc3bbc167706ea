import { existsSync, linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { StartProblem } from '../start-problem.js';
import { isAlive } from './users.js';

const LIMIT_MS = 60_000;

const codeOf = (problem: unknown): string | undefined => (problem as NodeJS.ErrnoException).code;

/** Puts our number into the lock: the file appears with its content, or not at all. */
function take(file: string): boolean {
  const mine = `${file}.${process.pid}`;
  try {
    writeFileSync(mine, String(process.pid));
    linkSync(mine, file);
    return true;
  } catch (problem) {
    if (codeOf(problem) === 'EEXIST') return false;
    throw new StartProblem(`${file} cannot be written (${codeOf(problem)}). Set DATA_DIR to a folder that you may write.`);
  } finally {
    rmSync(mine, { force: true });
  }
}

/** The process that holds the lock; 0 when it was let go meanwhile. */
const holderOf = (file: string): number => (existsSync(file) ? Number(readFileSync(file, 'utf8')) : 0);

/** Takes a dead holder's lock away. Two may try at once: only what was truly the dead one's is removed. */
function clear(file: string, dead: number): void {
  const aside = `${file}.${process.pid}.old`;
  try {
    renameSync(file, aside);
  } catch (problem) {
    if (codeOf(problem) === 'ENOENT') return;
    throw problem;
  }
  if (holderOf(aside) !== dead && !existsSync(file)) renameSync(aside, file);
  rmSync(aside, { force: true });
}

/** One process at a time looks, starts or stops: the file names its holder, and a dead holder's file is taken over. */
export async function alone<T>(file: string, work: () => Promise<T>): Promise<T> {
  const limit = Date.now() + LIMIT_MS;
  while (!take(file)) {
    const holder = holderOf(file);
    if (holder && !isAlive(holder)) clear(file, holder);
    else if (Date.now() > limit)
      throw new StartProblem(
        `Another process (${holder}) holds ${file} for more than ${LIMIT_MS / 1000} s. End it, or remove the file if no such process exists.`,
      );
    else await wait(50);
  }
  try {
    return await work();
  } finally {
    rmSync(file, { force: true });
  }
}
