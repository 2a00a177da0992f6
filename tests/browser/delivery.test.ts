import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import {
  bowOnCommandLine,
  hasBrowser,
  launchBrowser,
  openWorkbench,
  savedModel,
  settled,
  shownBow,
} from './workbench.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
};

/** Serves the built page from a folder, as a plain web server would; what it serves can be changed. */
async function plainServer(folder: string) {
  const changed = new Map<string, (text: string) => string>();
  const server = createServer(async (request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://x').pathname);
    const name = path === '/' ? '/index.html' : path;
    try {
      const body = await readFile(join(folder, name));
      const change = changed.get(name);
      response.setHeader('Content-Type', TYPES[extname(name)] ?? 'application/octet-stream');
      response.end(change ? change(body.toString()) : body);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return { url: `http://127.0.0.1:${address.port}/`, changed, close: () => server.close() };
}

describe.skipIf(!hasBrowser)('delivery', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser?.close());

  it('asks nothing of any other place and breaches its own policy nowhere', async () => {
    const { page, complaints, close } = await openWorkbench(browser, inject('workbenchUrl'));
    await settled(page);
    await page.getByTestId('site-B3').waitFor();
    await page.getByTestId('new-head').click();
    await page.getByTestId('start-make').click();
    await settled(page);
    await page.getByTestId('keys').click();
    await page.getByTestId('keys-sheet').waitFor();
    await page.keyboard.press('Escape');
    // A breach is an error on the console.
    expect(complaints).toEqual([]);
    const asked = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    const { host } = new URL(inject('workbenchUrl'));
    expect(asked.length).toBeGreaterThan(5);
    expect(asked.filter((url) => /^https?:/.test(url) && new URL(url).host !== host)).toEqual([]);
    // The policy is in force.
    const reached = await page.evaluate(async () => {
      try {
        await fetch('http://example.invalid/');
        return true;
      } catch {
        return false;
      }
    });
    expect(reached).toBe(false);
    expect(complaints.filter((text) => /Content Security Policy/.test(text)).length).toBeGreaterThan(0);
    await close();
  });

  it('opens and solves without a network after the first visit', async () => {
    const first = await openWorkbench(browser, inject('workbenchUrl'), { keeps: true });
    const { page } = first;
    await settled(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.context().setOffline(true);
    await page.reload();
    await page.getByTestId('field-body.thickness').fill('7');
    await page.getByTestId('field-body.thickness').blur();
    await settled(page);
    const model = await savedModel(page);
    expect(model.body.thickness).toBe(7);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
    // The guided start and the stage were kept as well.
    await page.getByTestId('site-B3').waitFor();
    await page.getByTestId('new-head').click();
    await page.getByTestId('start-make').waitFor();
    expect(first.complaints).toEqual([]);
    await first.close();
  });

  it('tells of a new version and changes to it when asked, keeping the head', async () => {
    const server = await plainServer(inject('workbenchFolder'));
    const { page, close } = await openWorkbench(browser, server.url, { keeps: true });
    await settled(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.getByTestId('field-body.thickness').fill('7');
    await page.getByTestId('field-body.thickness').blur();
    await settled(page);
    server.changed.set('/index.html', (text) => text.replace('<title>Flathead', '<title>Flathead, newer'));
    server.changed.set('/service-worker.js', (text) => text.replace(/flathead-[0-9a-f]{16}/, 'flathead-newer'));
    await page.reload();
    await page.getByText('A new version of Flathead is here').waitFor();
    expect(await page.title()).toBe('Flathead');
    await page.getByRole('button', { name: 'Change to it' }).click();
    await expect.poll(() => page.title().catch(() => '')).toBe('Flathead, newer');
    await settled(page);
    expect(await page.getByTestId('field-body.thickness').inputValue()).toBe('7');
    await close();
    server.close();
  });

  it('says so where the browser has no WebGL, and shows the rest', async () => {
    const { page, complaints, close } = await openWorkbench(browser, inject('workbenchUrl'), { webgl: false });
    await page.getByText('No three-dimensional view here.').waitFor();
    await settled(page);
    const plan = page.getByTestId('plan-stage').getByRole('img', { name: 'The head from above, coloured by its bow' });
    await plan.waitFor();
    await page.getByTestId('field-fasteners.5.at.0').fill('40');
    await page.getByTestId('field-fasteners.5.at.0').blur();
    await settled(page);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(await savedModel(page)));
    await page.getByTestId('numbers').click();
    await page.getByTestId('numbers-sites').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});
