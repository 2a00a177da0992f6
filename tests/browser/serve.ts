import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    workbenchUrl: string;
    /** Folder that it is built in. */
    workbenchFolder: string;
  }
}

const configFile = new URL('../../packages/viewer/vite.config.ts', import.meta.url).pathname;

/** Builds the workbench as it ships and serves it on a free port while the browser tests run. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const outDir = await mkdtemp(join(tmpdir(), 'flathead-workbench-'));
  const environment = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({ configFile, mode: 'production', logLevel: 'error', build: { outDir, emptyOutDir: true } });
  process.env.NODE_ENV = environment;
  const server = await preview({ configFile, build: { outDir }, preview: { port: 0, host: '127.0.0.1', open: false } });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The preview server listens on no port.');
  project.provide('workbenchFolder', outDir);
  project.provide('workbenchUrl', `http://127.0.0.1:${address.port}/`);
  return async () => {
    await server.close();
    await rm(outDir, { recursive: true, force: true });
  };
}
