import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const room = (folder: string): string => path.join(folder, 'users');

/** Whether a process has ended but nobody has asked how: in a container the first process may never ask. */
function isZombie(pid: number): boolean {
  try {
    return / Z /.test(readFileSync(`/proc/${pid}/stat`, 'utf8').replace(/^.*\)/, ''));
  } catch {
    // No /proc on this system, or the process is gone by now: the signal has the last word.
    return false;
  }
}

/** Whether a process of this number runs. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return !isZombie(pid);
  } catch (problem) {
    return (problem as NodeJS.ErrnoException).code === 'EPERM' && !isZombie(pid);
  }
}

/** Notes that this process uses the server of that folder. */
export function register(folder: string): void {
  mkdirSync(room(folder), { recursive: true });
  writeFileSync(path.join(room(folder), String(process.pid)), '');
}

/**
 * Notes that this process is done with the server.
 *
 * @returns whether another living process still uses it
 */
export function leave(folder: string): boolean {
  rmSync(path.join(room(folder), String(process.pid)), { force: true });
  let others = false;
  for (const name of readdirSync(room(folder))) {
    if (isAlive(Number(name))) others = true;
    else rmSync(path.join(room(folder), name), { force: true });
  }
  return others;
}
