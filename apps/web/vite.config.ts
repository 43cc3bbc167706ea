import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const api = 'http://127.0.0.1:3000';

export default defineConfig({
  define: { __APP_VERSION__: JSON.stringify(process.env['npm_package_version'] ?? '0') },
  root: import.meta.dirname,
  plugins: [react()],
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
  },
  server: { port: 5173, proxy: { '/graphql': api, '/files': api, '/health': api } },
});
