import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from './run.ts';

describe('scripts/serve.mjs', () => {
  let folder: string;
  let server: ChildProcess;
  let url: URL;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'flathead-serve-'));
    await mkdir(join(folder, 'page/assets'), { recursive: true });
    await writeFile(join(folder, 'page/index.html'), '<title>Flathead</title>');
    await writeFile(join(folder, 'page/assets/index-a1B2c3D4.js'), '1;');
    await writeFile(join(folder, 'secret.txt'), 'not of the page');
    server = spawn(process.execPath, [join(root, 'scripts/serve.mjs'), join(folder, 'page'), '0']);
    const [line] = await new Promise<string[]>((resolve) =>
      server.stdout!.on('data', (text) => resolve([String(text)])),
    );
    url = new URL(line.trim());
  });
  afterAll(async () => {
    server.kill();
    await rm(folder, { recursive: true, force: true });
  });

  /** Asks with the path as it is, which `fetch` would tidy. */
  const get = (path: string, method = 'GET') =>
    new Promise<{ status: number | undefined; headers: NodeJS.Dict<string | string[]>; body: string }>((done, fail) => {
      request({ port: url.port, path, method }, (answer) => {
        let body = '';
        answer.on('data', (text) => {
          body += text;
        });
        answer.on('end', () => done({ status: answer.statusCode, headers: answer.headers, body }));
      })
        .on('error', fail)
        .end();
    });

  it('serves the page with the headers that isolate it', async () => {
    const { status, headers, body } = await get('/');
    expect([status, body]).toEqual([200, '<title>Flathead</title>']);
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
    expect(headers['cache-control']).toBe('no-cache');
    const script = await get('/assets/index-a1B2c3D4.js');
    expect(script.headers['content-type']).toMatch(/^text\/javascript/);
    expect(script.headers['cache-control']).toContain('immutable');
  });

  it('serves nothing beside the folder, and takes nothing', async () => {
    for (const path of ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets', '/none.js', '/%00'])
      expect((await get(path)).status, path).toBe(404);
    expect((await get('/%zz')).status).toBe(400);
    expect((await get('/', 'POST')).status).toBe(405);
  });
});
