import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { singleFile } from './delivery/single-file.ts';

/** The workbench as one file, dist/flathead.html, that opens from disk. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react(), singleFile('flathead.html')],
  css: { transformer: 'lightningcss' },
  build: {
    target: 'es2022',
    outDir: fileURLToPath(new URL('../../dist', import.meta.url)),
    emptyOutDir: false,
    modulePreload: false,
    cssCodeSplit: false,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    chunkSizeWarningLimit: 10_000,
    rolldownOptions: { output: { codeSplitting: false }, checks: { pluginTimings: false } },
  },
});
