import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { root } from '../command-line/run.ts';
import { visitEach } from './visit.ts';
import { colouredShare, drawn, hasBrowser, settled } from './workbench.ts';

/** A picture is no larger, bytes. */
const MOST_BYTES = 250_000;

/** A page as it is shown in docs/pictures/: the way there from the one before, and the parts that have to be in it. */
interface Scene {
  readonly name: string;
  enter(page: Page): Promise<unknown>;
  readonly parts: readonly string[];
  /** Whether the stage is part of it. */
  readonly stage?: boolean;
}

const open = (page: Page, name: string): Promise<void> => page.getByTestId(`page-${name}`).click();

const SCENES: readonly Scene[] = [
  {
    name: 'bench',
    enter: (page) => page.getByTestId('advice-all').waitFor(),
    parts: ['verdict', 'advice', 'stage', 'site-B3'],
    stage: true,
  },
  {
    name: 'section',
    enter: async (page) => {
      await page.getByTestId('section').click();
      await page.getByTestId('section-drawer').locator('svg').first().waitFor();
    },
    parts: ['verdict', 'stage', 'section-drawer'],
    stage: true,
  },
  {
    name: 'compare',
    enter: async (page) => {
      await page.getByTestId('section').click();
      await page.getByTestId('duplicate').click();
      await page.getByTestId('try-fasteners').click();
      await settled(page);
      await page.getByTestId('compare').click();
      await page.getByTestId('comparison').locator('image').first().waitFor();
    },
    parts: ['comparison'],
  },
  {
    name: 'start',
    enter: async (page) => {
      await page.keyboard.press('Escape');
      await page.getByTestId('new-head').click();
      await page.getByTestId('start-make').waitFor();
    },
    parts: ['start', 'start-bow', 'start-make'],
  },
  {
    name: 'report',
    enter: async (page) => {
      await page.keyboard.press('Escape');
      await open(page, 'report');
      await page.getByTestId('report').locator('image').first().waitFor();
    },
    parts: ['report', 'report-criteria', 'print'],
  },
  {
    name: 'checks',
    enter: async (page) => {
      await open(page, 'checks');
      const first = page.locator('[data-testid^="topic-"]').first();
      await first.getByRole('button', { name: /^Run/ }).click();
      await first.locator('tr[data-state="within"]').nth(5).waitFor();
      await page.getByTestId('checks-run').waitFor();
    },
    parts: ['checks-tally', 'checks-run'],
  },
  {
    name: 'studies',
    enter: async (page) => {
      await open(page, 'studies');
      await page.getByTestId('study-sweep').check({ force: true });
      await page.getByTestId('setup-count').fill('5');
      await page.getByTestId('study-run').click();
      await page.locator('[data-testid="result-sweep"][data-state="done"]').waitFor();
    },
    parts: ['study-run', 'result-sweep'],
  },
  { name: 'budget', enter: (page) => open(page, 'budget'), parts: ['budget-table', 'budget-total'] },
];

describe.skipIf(!hasBrowser)('pictures', () => {
  const visit = visitEach();

  it.each(['light', 'dark'] as const)('shows every page with its parts in %s', async (colourScheme) => {
    const { page } = visit.bench;
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.emulateMedia({ colorScheme: colourScheme, reducedMotion: 'reduce' });
    await settled(page);
    await drawn(page);
    for (const { name, enter, parts, stage = false } of SCENES) {
      await enter(page);
      for (const part of parts) await page.getByTestId(part).first().waitFor();
      // The painted body alone covers more; a stage that was not drawn has its labels only.
      if (stage) await expect.poll(() => colouredShare(page), { timeout: 30_000 }).toBeGreaterThan(0.03);
      await page.mouse.move(0, 0);
      // Things glide to their place.
      await page.waitForTimeout(800);
      const background = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      const brightness = Math.max(...(background.match(/\d+/g) ?? []).map(Number));
      expect(brightness > 128 ? 'light' : 'dark', name).toBe(colourScheme);
      if (process.env.UPDATE_PICTURES === '1') await keep(page, `${name}-${colourScheme}.webp`);
    }
  });
});

/** Writes what the page shows to docs/pictures/. */
async function keep(page: Page, name: string): Promise<void> {
  const png = (await page.screenshot()).toString('base64');
  const webp = await page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    canvas.getContext('2d')?.drawImage(image, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/webp', quality: 0.92 });
    let letters = '';
    for (const byte of new Uint8Array(await blob.arrayBuffer())) letters += String.fromCharCode(byte);
    return btoa(letters);
  }, png);
  const picture = Buffer.from(webp, 'base64');
  expect(picture.length, name).toBeLessThan(MOST_BYTES);
  await mkdir(join(root, 'docs', 'pictures'), { recursive: true });
  await writeFile(join(root, 'docs', 'pictures', name), picture);
}
