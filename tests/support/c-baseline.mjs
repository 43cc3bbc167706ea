// The same model in C, where the machine has a compiler: what a benchmark of arithmetic measures itself against.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const COMPILERS = ['gcc', 'cc'];
const FLAGS = ['-O3', '-march=native', '-std=c11'];

export const NO_COMPILER = 'no C compiler here (gcc or cc): the comparison with C is left out';

/** Compiles a program; its path, or null where there is no compiler. It is removed when the process ends. */
export function compileC(source) {
  const compiler = COMPILERS.find((name) => spawnSync(name, ['--version'], { stdio: 'ignore' }).status === 0);
  if (compiler === undefined) return null;
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-c-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const [code, program] = [path.join(folder, 'baseline.c'), path.join(folder, 'baseline')];
  writeFileSync(code, source);
  execFileSync(compiler, [...FLAGS, code, '-o', program, '-lm'], { stdio: ['ignore', 'ignore', 'inherit'] });
  return program;
}

/** Runs a compiled program with arguments; what it prints is one value in JSON. */
export function runC(program, args = []) {
  return JSON.parse(execFileSync(program, args.map(String), { encoding: 'utf8', maxBuffer: 256 << 20 }));
}
