import { readFileSync } from 'node:fs';
import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { FIELD_STARTS, fieldWithinBytes } from './field-bytes.js';

const api = 'http://127.0.0.1:3000';

/** The pages are kept on the phone whole, and can be put on its home screen. Registered by our own script: the policy allows nothing inline. */
const pages = {
  strategies: 'injectManifest',
  srcDir: 'src/app',
  filename: 'service-worker.ts',
  injectRegister: null,
  injectManifest: { globPatterns: ['**/*.{js,css,html,woff2,svg,png,webmanifest}'], maximumFileSizeToCacheInBytes: 4 * 1024 * 1024 },
  manifest: {
    id: '/',
    name: 'Rillbook',
    short_name: 'Rillbook',
    description: 'The day’s stops, with or without signal.',
    start_url: '/today',
    scope: '/',
    display: 'standalone',
    background_color: '#FBFAF6',
    theme_color: '#FBFAF6',
    icons: [
      { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icons/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
} as const;

const GENERATED = path.join(import.meta.dirname, 'src/graphql/__generated__/graphql.ts');
const DOCUMENT = /export const (\w+) = (\{.*\}) as unknown as DocumentNode/g;
const ASKED = /\bgraphql\(\s*`\s*(query|mutation|subscription|fragment)\s+(\w+)[^`]*`,?\s*\)/g;
const ASKING = /import \{ graphql \} from '[^']*\/gql\.js';/;

/**
 * Puts each document where it is asked for. The generated map names all of them in one file, which every page would load whole: more than half of
 * what a phone reads before it draws.
 */
function documentsInPlace(): Plugin {
  let documents: ReadonlyMap<string, string> = new Map();
  return {
    name: 'documents-in-place',
    apply: 'build',
    enforce: 'pre',
    buildStart() {
      documents = new Map([...readFileSync(GENERATED, 'utf8').matchAll(DOCUMENT)].map(([, name = '', json = '']) => [name, json]));
    },
    transform(code, id) {
      if (!ASKING.test(code) || id.includes('__generated__')) return null;
      const inPlace = code.replace(ASKED, (_, kind: string, name: string) => {
        const json = documents.get(`${name}${kind === 'fragment' ? 'FragmentDoc' : 'Document'}`);
        if (json === undefined) return this.error(`${name} is not among the generated documents: run codegen.`);
        return `JSON.parse(${JSON.stringify(json)})`;
      });
      return { code: inPlace.replace(ASKING, ''), map: null };
    },
  };
}

interface Modules {
  readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null;
}

const ofField = new Set<string>();

/** Whether a page of the field needs a module: one of its starts imports it, or something that one of them imports. */
function isOfField(id: string, modules: Modules): boolean {
  const open = ofField.size === 0 ? [...FIELD_STARTS] : [];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (ofField.has(next)) continue;
    ofField.add(next);
    open.push(...(modules.getModuleInfo(next)?.importedIds ?? []));
  }
  return ofField.has(id);
}

/**
 * A phone that opens cold reads its files through its own worker, and each file costs it more than what stands in it: what many pages share is one
 * file, and the pages of the field are one. What only pages of the desk share is not read by a phone.
 */
const SHARED = {
  test: /\/(node_modules|apps\/web\/src\/(ui|page|says|graphql|session|offline)|libs\/[^/]+\/src)\//,
  minShareCount: 2,
};
// A group takes what its modules need with them: the phone's come first, or the desk's would take them away.
const GROUPS = [
  { ...SHARED, name: (id: string, modules: Modules) => (isOfField(id, modules) ? 'shared' : null), priority: 3 },
  { name: 'field', test: /\/apps\/web\/src\/features\/fieldwork\/(device|today|phone|stop|settings-beside)\//, priority: 2 },
  { ...SHARED, name: 'desk', priority: 1 },
];

export default defineConfig({
  define: { __APP_VERSION__: JSON.stringify(process.env['npm_package_version'] ?? '0') },
  root: import.meta.dirname,
  plugins: [documentsInPlace(), react(), VitePWA(pages), fieldWithinBytes()],
  resolve: { conditions: ['rillbook-source', 'import', 'module', 'browser', 'default'] },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    chunkSizeWarningLimit: 700,
    // Nothing inline: the content security policy allows files of this site only.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups: GROUPS } } },
  },
  server: { port: 5173, proxy: { '/graphql': api, '/files': api, '/health': api } },
});
