import path from 'node:path';
import { defineConfig } from 'vitest/config';
import { keepCosts, QuickFirst } from './quick-first.js';

// The tests of the libraries as mutation testing runs them: from a copy of the tree, so that the libraries are taken
// from that copy and not through node_modules, which leads back to the original.
const top = path.resolve(import.meta.dirname, '../..');

// Only the changed library's own tests and the published examples.
const library = process.env.MUTATED_LIBRARY ?? '*';
// The part of the library's tests that must notice, all where nobody says: what only the others would notice counts as not noticed.
const part = process.env.MUTATION_TESTS ? `${process.env.MUTATION_TESTS}/` : '';
// Folders whose code is left as it is: their tests are left out too, as they take longest and are not meant to notice.
const left = (process.env.MUTATION_LEFT_OUT ?? '').split(' ').filter(Boolean);
// These run fleets of meters and crowds of controllers, half a minute for each change: what only they would notice counts as not noticed.
const TOO_LONG = ['tests/libs/metering/detection/hourly/healthy.spec.ts', 'tests/libs/irrigation/planning/effort.spec.ts'];

export default defineConfig({
  root: top,
  resolve: {
    alias: [
      { find: /^@rillbook\/([a-z]+)\/(.*)\.js$/, replacement: `${top}/libs/$1/src/$2.ts` },
      { find: /^fast-check$/, replacement: `${top}/tests/mutation/few-runs.ts` },
    ],
  },
  test: {
    include: [`tests/libs/${library}/${part}**/*.spec.ts`, 'tests/golden/**/*.spec.ts'],
    exclude: ['tests/libs/agronomy/nomenclature.spec.ts', ...TOO_LONG, ...left.map((folder) => `tests/libs/${library}/${folder}/**`)],
    reporters: [keepCosts, 'default'],
    sequence: { sequencer: QuickFirst },
    testTimeout: 300_000,
    isolate: false,
  },
});
