// Builds what `npm start`, `npm test` and the command-line ways need; what is up to date is left alone.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const top = path.resolve(import.meta.dirname, '..');
const onlyApi = process.argv.includes('--api');

/** Runs one of the project's own tools; rejects with its output when it fails. */
const run = (bin, args) =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(top, 'node_modules', bin), ...args], { cwd: top, stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    child.stdout.on('data', (piece) => {
      out += piece;
    });
    child.stderr.on('data', (piece) => {
      out += piece;
    });
    child.on('error', reject);
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`${bin} ${args.join(' ')} failed:\n${out}`))));
  });

/** A fingerprint of the names, sizes and times of all files below some places. */
const fingerprint = (places) => {
  const hash = createHash('sha256');
  const walk = (place) => {
    const stat = statSync(place);
    if (!stat.isDirectory()) return void hash.update(`${place} ${stat.size} ${stat.mtimeMs}\n`);
    for (const name of readdirSync(place).sort())
      if (!/^(dist|dist-types|node_modules|__generated__)$/.test(name)) walk(path.join(place, name));
  };
  for (const place of places) walk(path.join(top, place));
  return hash.digest('hex');
};

const web = async () => {
  const mark = path.join(top, 'apps/web/dist/.built-from');
  const now = fingerprint(['apps/web', 'libs', 'schema.graphql', 'package-lock.json']);
  if (existsSync(mark) && readFileSync(mark, 'utf8') === now) return;
  await run('@graphql-codegen/cli/cjs/bin.js', ['--config', 'apps/web/codegen.ts']);
  await run('vite/bin/vite.js', ['build', 'apps/web', '--logLevel', 'warn']);
  mkdirSync(path.dirname(mark), { recursive: true });
  writeFileSync(mark, now);
};

try {
  await Promise.all([run('typescript/bin/tsc', ['-b', 'apps/api']), onlyApi ? undefined : web()]);
} catch (problem) {
  console.error(problem.message);
  process.exit(1);
}
