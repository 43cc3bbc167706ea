// Mutation testing of the libraries: each operator, constant and condition is changed in turn, and a test must notice.
// `npm run prove -- mutation` runs all four, `npm run prove -- mutation units` one. Further words choose within the library:
// a folder (`evapotranspiration/air`), part of a file's name (`wind-speed`), and with a leading `!` what to leave
// out, with its tests.
// A change must be noticed by the tests of its own library or by the published examples; those of the libraries that build
// on it do not count. `MUTATION_CONCURRENCY=1` leaves a core to others; `MUTATION_SHARE=0.1 MUTATION_SEED=7` draws a tenth of the functions, and
// the score is then said with the chance of the draw. `MUTATION_TESTS=detection` lets only the tests of that folder notice, `MUTATION_TIMEOUT_S=120`
// waits so long before a run counts as endless. The score must be at least 85 % in each; a survivor is told with its place as soon as it is known.
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Stryker } from '@stryker-mutator/core';

const LIBRARIES = ['units', 'agronomy', 'irrigation', 'metering'];
const LEAST_SCORE = 85;

const KILLED = new Set(['Killed', 'Timeout']);
const ALIVE = new Set(['Survived', 'NoCoverage']);

const isFolder = (place) => statSync(place, { throwIfNoEntry: false })?.isDirectory() === true;

/** Which files are changed: all of the library, or those that the words choose. */
function chosen(library, words) {
  const source = `libs/${library}/src`;
  const glob = (word) => `${source}/${isFolder(`${source}/${word}`) ? `${word}/**/*.ts` : `**/*${word}*`}`;
  const wanted = words.filter((word) => !word.startsWith('!'));
  const left = words.filter((word) => word.startsWith('!')).map((word) => `!${glob(word.slice(1))}`);
  return [...(wanted.length ? wanted.map(glob) : [`${source}/**/*.ts`]), ...left];
}

async function mutate(library, words) {
  const temporary = mkdtempSync(path.join(tmpdir(), 'mutation-'));
  process.env.MUTATED_LIBRARY = library;
  process.env.MUTATION_LEFT_OUT = words.flatMap((word) => (word.startsWith('!') ? [word.slice(1)] : [])).join(' ');
  try {
    return await new Stryker({
      mutate: chosen(library, words),
      testRunner: 'vitest',
      // Not only the tests that import a changed file by its name: those of numbers find each function by themselves.
      vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
      plugins: ['@stryker-mutator/vitest-runner', path.resolve('tests/mutation/chosen-parts.mjs')],
      ignorers: ['chosen-parts'],
      coverageAnalysis: 'perTest',
      ignoreStatic: true,
      ignorePatterns: ['apps/*/src', 'apps/*/dist', 'apps/api/demo', 'docs', '**/dist', 'tests/api', 'tests/web', 'tests/e2e'],
      tempDirName: path.join(temporary, 'tree'),
      reporters: ['progress-append-only', 'survivors-at-once'],
      logLevel: 'error',
      concurrency: Number(process.env.MUTATION_CONCURRENCY ?? 2),
      // Beside half as much again as the tests took unchanged: on a machine that grows busier a slow run is no endless one.
      timeoutMS: 1000 * Number(process.env.MUTATION_TIMEOUT_S ?? 20),
      // All tests of a library once, on a machine that may be busy.
      dryRunTimeoutMinutes: 60,
      allowEmpty: true,
    }).runMutationTest();
  } finally {
    rmSync(temporary, { recursive: true, force: true });
  }
}

const placeOf = ({ fileName }) => path.relative(process.cwd(), fileName);

/** The first folders below `src`, each with what was noticed of what was changed there. */
function byFolder(library, results) {
  const folders = new Map();
  for (const mutant of results) {
    const folder = path.dirname(path.relative(`libs/${library}/src`, placeOf(mutant))).split('/')[0];
    const found = folders.get(folder) ?? { killed: 0, all: 0 };
    folders.set(folder, { killed: found.killed + Number(KILLED.has(mutant.status)), all: found.all + 1 });
  }
  return [...folders].map(([folder, { killed, all }]) => `  ${folder}: ${killed} of ${all}, ${((100 * killed) / all).toFixed(1)} %`);
}

/** One standard deviation of the score of a drawn share, files taken whole: what is noticed in one file goes together. [%] */
function chanceOf(counted, score) {
  const off = new Map();
  for (const { fileName, status } of counted) off.set(fileName, (off.get(fileName) ?? 0) + Number(KILLED.has(status)) - score / 100);
  return (100 * Math.hypot(...off.values())) / counted.length;
}

function judged(library, results) {
  const counted = results.filter(({ status }) => KILLED.has(status) || ALIVE.has(status));
  if (counted.length === 0) throw new Error(`${library}: nothing was mutated`);
  const killed = counted.filter(({ status }) => KILLED.has(status)).length;
  const score = (100 * killed) / counted.length;
  for (const line of byFolder(library, counted)) console.log(line);
  const drawn = process.env.MUTATION_SHARE ? `, give or take ${chanceOf(counted, score).toFixed(1)}` : '';
  // On a machine whose load grows meanwhile a run may only have been slow: whoever reads the score should see how many.
  const slow = counted.filter(({ status }) => status === 'Timeout').length;
  const held = slow ? `, ${slow} of them by running on` : '';
  return { library, score, line: `${library}: ${killed} of ${counted.length} changes noticed, ${score.toFixed(1)} %${drawn}${held}` };
}

export async function prove([library, ...words]) {
  if (library && !LIBRARIES.includes(library)) throw new Error(`there is no library ${library}; there are ${LIBRARIES.join(', ')}`);
  const found = [];
  for (const each of library ? [library] : LIBRARIES) {
    found.push(judged(each, await mutate(each, words)));
    console.log(found.at(-1).line);
  }
  const weak = found.filter(({ score }) => score < LEAST_SCORE);
  if (weak.length) throw new Error(`below ${LEAST_SCORE} %: ${weak.map(({ line }) => line).join('; ')}`);
  return found.map(({ line }) => line).join('\n');
}
