import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { stripVTControlCharacters } from 'node:util';

const top = path.resolve(import.meta.dirname, '../../..');

/** Builds the product and runs one of these proofs; answers the line in which it tells its counts. */
export function runOnPhones(spec, environment = {}) {
  // What goes wrong, and how far it is, is seen at once.
  const stdio = ['ignore', 'pipe', 'inherit'];
  const node = (...args) =>
    spawnSync(process.execPath, args, { cwd: top, encoding: 'utf8', maxBuffer: 64 << 20, stdio, env: { ...process.env, ...environment } });
  const built = node('.ci/build.mjs');
  if (built.status !== 0) throw new Error(built.stdout);
  const { status, stdout } = node('node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/prove/phones/vitest.config.ts', spec);
  if (status !== 0) throw new Error(stdout);
  return stripVTControlCharacters(stdout)
    .split('\n')
    .filter((line) => line.startsWith('told: '))
    .map((line) => line.slice('told: '.length))
    .join('\n');
}
