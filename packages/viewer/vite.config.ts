import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { delivery } from './delivery/plugin.ts';

/** Cross-origin isolation, for memory shared between workers. The page works without it, on one thread. */
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react(), delivery()],
  server: { port: 5173, strictPort: false, headers: isolation },
  preview: { port: 5173, strictPort: false, headers: isolation },
  css: { transformer: 'lightningcss' },
  worker: { format: 'es' },
  // The stage and the controls come in one file each: all of it is needed before the first answer shows.
  build: { target: 'es2022', chunkSizeWarningLimit: 2000, rolldownOptions: { checks: { pluginTimings: false } } },
});
