import path from 'node:path';
import type { CodegenConfig } from '@graphql-codegen/cli';

const root = path.resolve(import.meta.dirname, '../..');

/** Types for every document, from the contract that is committed at the root; Apollo masks fragments, so the preset does not. */
const config: CodegenConfig = {
  schema: path.join(root, 'schema.graphql'),
  documents: [
    path.join(root, 'apps/web/src/**/*.tsx'),
    path.join(root, 'apps/web/src/**/*.ts'),
    `!${path.join(root, 'apps/web/src/graphql/__generated__/**')}`,
  ],
  ignoreNoDocuments: true,
  silent: true,
  generates: {
    [path.join(root, 'apps/web/src/graphql/__generated__/')]: {
      preset: 'client',
      presetConfig: { fragmentMasking: false },
      config: {
        useTypeImports: true,
        enumsAsTypes: true,
        strictScalars: true,
        scalars: { Date: 'string', DateTime: 'string', Month: 'string', JSON: 'unknown' },
        customDirectives: { apolloUnmask: true },
        inlineFragmentTypes: 'mask',
      },
    },
  },
};

export default config;
