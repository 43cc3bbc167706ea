import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** The account that the database server runs as when we are root. */
export interface Unprivileged {
  readonly uid: number;
  readonly gid: number;
}

/** PostgreSQL's environment: nothing of ours leaks into it. */
export const engineEnvironment = { PATH: process.env['PATH'] ?? '', SystemRoot: process.env['SystemRoot'] ?? '', LC_ALL: 'C', TZ: 'UTC' };

/** The account to drop to: 'postgres' where the machine has it, else 'nobody'; undefined when we are not root. */
export function unprivileged(): Unprivileged | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const accounts = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'));
  const found = accounts.find(([name]) => name === 'postgres') ?? accounts.find(([name]) => name === 'nobody');
  return { uid: Number(found?.[2] ?? 65534), gid: Number(found?.[3] ?? 65534) };
}

/** Runs a program to its end as that account. */
export function asUnprivileged(user: Unprivileged | undefined, command: string, args: readonly string[]): SpawnSyncReturns<string> {
  return spawnSync(command, args, { ...user, cwd: '/', env: engineEnvironment, encoding: 'utf8' });
}

/** Whether that account can enter a folder: a parent of mode 0700 is enough to close it. */
export const canEnter = (user: Unprivileged, folder: string): boolean =>
  asUnprivileged(user, '/bin/sh', ['-c', 'cd "$0"', folder]).status === 0;
