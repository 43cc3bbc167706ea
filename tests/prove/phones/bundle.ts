import path from 'node:path';
import { build } from 'vite';

/** The harness with everything that it imports of the product, as one script. */
export async function harnessScript(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    root: path.resolve(import.meta.dirname, '../../../apps/web'),
    define: { 'process.env.NODE_ENV': '"production"', __APP_VERSION__: '"proof"' },
    resolve: { conditions: ['rillbook-source', 'import', 'module', 'browser', 'default'] },
    build: {
      write: false,
      lib: { entry: path.join(import.meta.dirname, 'harness.ts'), formats: ['iife'], name: 'proof' },
    },
  });
  const [bundle] = Array.isArray(built) ? built : [built];
  const chunk = bundle && 'output' in bundle ? bundle.output.find((one) => one.type === 'chunk') : undefined;
  if (chunk?.type !== 'chunk') throw new Error('the harness was not built');
  return chunk.code;
}
