import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Cross-origin isolation, for memory shared between workers. The page works without it, on one thread. */
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react()],
  server: { port: 5173, strictPort: false, headers: isolation },
  preview: { port: 5173, strictPort: false, headers: isolation },
  worker: { format: 'es' },
  build: { target: 'es2022' },
});
