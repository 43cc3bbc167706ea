import { createRequire } from 'node:module';
import path from 'node:path';
import { defineConfig } from 'vitest/config';

// Proofs with the built product, its own PostgreSQL and a Chromium: too long for `npm test`.
const resolve = {
  conditions: ['rillbook-source', 'node'],
  alias: [{ find: /^graphql$/, replacement: createRequire(import.meta.url).resolve('graphql') }],
};

export default defineConfig({
  root: path.resolve(import.meta.dirname, '../../..'),
  resolve,
  ssr: { resolve },
  test: {
    include: ['tests/prove/phones/*.spec.ts'],
    testTimeout: 7_200_000,
    hookTimeout: 240_000,
    fileParallelism: false,
  },
});
