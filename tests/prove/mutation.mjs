// Mutation testing of the libraries: each operator, constant and condition is changed in turn, and a test must notice.
// `npm run prove -- mutation` runs all four, `npm run prove -- mutation units` one, `... units flow.ts` the files of a name.
// The score must be at least 85 % in each; survivors are listed with their place.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Stryker } from '@stryker-mutator/core';

const LIBRARIES = ['units', 'agronomy', 'irrigation', 'metering'];
const LEAST_SCORE = 85;
const MOST_SHOWN = 60;

const KILLED = new Set(['Killed', 'Timeout']);
const ALIVE = new Set(['Survived', 'NoCoverage']);

async function mutate(library, pattern) {
  const temporary = mkdtempSync(path.join(tmpdir(), 'mutation-'));
  try {
    return await new Stryker({
      mutate: [`libs/${library}/src/${pattern ? `**/*${pattern}*` : '**/*.ts'}`],
      testRunner: 'vitest',
      vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
      plugins: ['@stryker-mutator/vitest-runner'],
      coverageAnalysis: 'perTest',
      ignoreStatic: true,
      ignorePatterns: ['apps/*/src', 'apps/*/dist', 'apps/api/demo', 'docs', '**/dist', 'tests/api', 'tests/web', 'tests/e2e'],
      tempDirName: path.join(temporary, 'tree'),
      reporters: ['progress-append-only'],
      logLevel: 'error',
      concurrency: 2,
      timeoutMS: 20_000,
      allowEmpty: true,
    }).runMutationTest();
  } finally {
    rmSync(temporary, { recursive: true, force: true });
  }
}

const says = ({ fileName, location, mutatorName, replacement, status }) =>
  `  ${status} ${path.relative(process.cwd(), fileName)}:${location.start.line} ${mutatorName}: ${(replacement ?? '').slice(0, 90).replaceAll('\n', ' ')}`;

function judged(library, results) {
  const alive = results.filter(({ status }) => ALIVE.has(status));
  const killed = results.filter(({ status }) => KILLED.has(status)).length;
  if (killed + alive.length === 0) throw new Error(`${library}: nothing was mutated`);
  const score = (100 * killed) / (killed + alive.length);
  for (const mutant of alive.slice(0, MOST_SHOWN)) console.log(says(mutant));
  if (alive.length > MOST_SHOWN) console.log(`  and ${alive.length - MOST_SHOWN} more`);
  return { library, score, line: `${library}: ${killed} of ${killed + alive.length} changes noticed, ${score.toFixed(1)} %` };
}

export async function prove([library, pattern]) {
  if (library && !LIBRARIES.includes(library)) throw new Error(`there is no library ${library}; there are ${LIBRARIES.join(', ')}`);
  const found = [];
  for (const each of library ? [library] : LIBRARIES) {
    found.push(judged(each, await mutate(each, pattern)));
    console.log(found.at(-1).line);
  }
  const weak = found.filter(({ score }) => score < LEAST_SCORE);
  if (weak.length) throw new Error(`below ${LEAST_SCORE} %: ${weak.map(({ line }) => line).join('; ')}`);
  return found.map(({ line }) => line).join('\n');
}
