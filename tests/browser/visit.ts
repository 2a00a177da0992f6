import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject } from 'vitest';
import { launchBrowser, openWorkbench, type Workbench } from './workbench.ts';

/** What the tests of a `describe` find: the browser of the file and the page of the present test. */
export interface Visit {
  readonly browser: Browser;
  readonly bench: Workbench;
}

/** For tests that do not look at the stage: much of their time would go to drawing it in software. */
export const UNDRAWN = { draws: false, glides: false } as const;

/** Sets up one browser for a `describe` and a fresh visitor for each test; a test whose page complained fails. */
export function visitEach(
  options: Parameters<typeof openWorkbench>[2] = {},
  launch: Parameters<typeof launchBrowser>[0] = {},
): Visit {
  let browser: Browser;
  let bench: Workbench;
  beforeAll(async () => {
    browser = await launchBrowser(launch);
  });
  afterAll(() => browser?.close());
  beforeEach(async () => {
    bench = await openWorkbench(browser, inject('workbenchUrl'), options);
  });
  afterEach(async () => {
    const { complaints } = bench;
    await bench.close();
    expect(complaints).toEqual([]);
  });
  return {
    get browser() {
      return browser;
    },
    get bench() {
      return bench;
    },
  };
}
