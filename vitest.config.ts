import { createRequire } from 'node:module';
import { defineConfig } from 'vitest/config';

// Vitest hands these to Node too, so 'import' must not stand among them: it would give ESM to CommonJS packages.
// And there must be one graphql: the packages that Node loads take its CommonJS entry.
const resolve = {
  conditions: ['rillbook-source', 'node'],
  alias: [{ find: /^graphql$/, replacement: createRequire(import.meta.url).resolve('graphql') }],
};
const ssr = { resolve };

/** Files that measure how much memory grows have a process of their own: in a shared one the growth is another file's. */
const MEASURES_MEMORY = ['tests/api/exchange/**/large-*.spec.ts'];

export default defineConfig({
  resolve,
  ssr,
  test: {
    reporters: ['default'],
    // Left alone, one processor is kept free: on a machine of two the other half of it would wait.
    maxWorkers: '100%',
    teardownTimeout: 60_000,
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'libs',
          // Files of libraries and of the api leave nothing behind in their modules: one process loads them once for all.
          isolate: false,
          include: ['tests/libs/**/*.spec.ts', 'tests/golden/**/*.spec.ts', 'tests/house/**/*.spec.ts'],
          // A slow machine with other work takes many times what a quiet one does.
          testTimeout: 180_000,
        },
      },
      {
        resolve,
        ssr,
        oxc: { decorator: { legacy: true, emitDecoratorMetadata: true } },
        test: {
          name: 'api',
          isolate: false,
          sequence: { groupOrder: 1 },
          include: ['tests/api/**/*.spec.ts'],
          exclude: MEASURES_MEMORY,
          globalSetup: ['tests/support/database.global.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        resolve,
        ssr,
        oxc: { decorator: { legacy: true, emitDecoratorMetadata: true } },
        test: { name: 'memory', include: MEASURES_MEMORY, testTimeout: 60_000 },
      },
      {
        resolve: { conditions: ['rillbook-source', 'browser'] },
        define: { __APP_VERSION__: '"test"' },
        test: {
          name: 'web',
          // As above: half of a page's test would be the loading of the pages once more. What a test puts in the window it takes out.
          isolate: false,
          unstubGlobals: true,
          include: ['tests/web/**/*.spec.{ts,tsx}'],
          setupFiles: ['tests/web/support/catalogues.ts'],
          environment: 'jsdom',
          testTimeout: 90_000,
        },
      },
      {
        resolve,
        ssr,
        test: {
          name: 'e2e',
          sequence: { groupOrder: 2 },
          include: ['tests/e2e/**/*.spec.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
