import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  bowOnCommandLine,
  hasBrowser,
  launchBrowser,
  openWorkbench,
  savedModel,
  settled,
  shownBow,
} from './workbench.ts';

const configFile = new URL('../../packages/viewer/vite.single.config.ts', import.meta.url).pathname;

describe.skipIf(!hasBrowser)('the workbench in one file', () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'flathead-single-'));
    const environment = process.env.NODE_ENV;
    process.env.NODE_ENV = 'production';
    await build({ configFile, mode: 'production', logLevel: 'error', build: { outDir: folder } });
    process.env.NODE_ENV = environment;
    browser = await launchBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await rm(folder, { recursive: true, force: true });
  });

  it('opens from disk, solves Kestrel like the command line and lists the checks, without asking for anything else', async () => {
    expect(await readdir(folder)).toEqual(['flathead.html']);
    const url = pathToFileURL(join(folder, 'flathead.html')).href;
    const { page, complaints, close } = await openWorkbench(browser, url);
    await settled(page);
    const model = await savedModel(page);
    expect(model.name).toMatch(/^Kestrel/);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    // The book of checks comes out of a worker of its own.
    await page.getByTestId('page-checks').click();
    await page.locator('[data-testid="checks-run"]:enabled').waitFor();
    const asked = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    expect(asked.filter((name) => !/^(blob|data):/.test(name))).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
