import { readFile } from 'node:fs/promises';
import { type HeadModel, type HeadResult, modelHash, VERSION } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { hasPdfReader } from '../../scripts/pdf-reader.mjs';
import { flathead } from '../command-line/run.ts';
import { type PdfPage, pdfPages } from './pdf-words.ts';
import { UNDRAWN, visitEach } from './visit.ts';
import { hasBrowser, savedModel, settled } from './workbench.ts';

/** Least distance of any word from the edge of the paper, points: what office printers leave white. */
const PRINTABLE = 18;
/** Height of what runs along the lower edge, points. */
const FOOTER = 54;
/** Names that would be markup, a style, a formula or a broken page where they are not kept as text. */
const HOSTILE = '<img src=x onerror="document.title=1"> =1+1 </style> "\\';

describe.skipIf(!hasBrowser || (!hasPdfReader() && !process.env.CI))('report', () => {
  const visit = visitEach({ ...UNDRAWN, colourScheme: 'dark' });

  it('prints what the command line says to A4 and Letter, whole and light, with hash and cautions', async () => {
    const { page } = visit.bench;
    await settled(page);
    const model = await savedModel(page);
    await openReport(page);
    await page.getByTestId('report-project').fill('Kestrel line 2');
    await page.getByTestId('report-revision').fill('C');
    await page.getByTestId('report-approved').fill('B. Reader');

    const { verdict, cases } = await onCommandLine(model);
    const a4 = await pdfPages(await page.pdf({ format: 'A4', printBackground: true }));
    const letter = await pdfPages(await page.pdf({ format: 'Letter', printBackground: true }));
    for (const [pages, width, height] of [
      [a4, 595, 842],
      [letter, 612, 792],
    ] as const) {
      expect(pages.length).toBeGreaterThanOrEqual(4);
      expect(pages.length).toBeLessThanOrEqual(5);
      const all = wordsOf(pages);
      expect(all).toContain(modelHash(model));
      expect(all).toMatch(/Project Author Revision Kestrel line 2 C Date Model Solver \d{4}-/);
      expect(all).toMatch(/Checked by Approved by B\. Reader name date signature/);
      expect(pages.map(emptyShare).filter((share) => share > 0.4)).toEqual([]);
      const bow = verdict.criteria.find(({ criterion }) => criterion === 'bow')!;
      expect(all).toContain(
        `Bow ${digits(bow.value)} µm ±${digits(bow.error!)} µm at most 35.0 µm ${bow.site} ${bow.case}`,
      );
      expect(all).toContain(verdict.sentence.replace(/\bum\b/g, 'µm'));
      for (const { name, at, reaction } of cases[0].fasteners) {
        expect(all).toContain(`${name} ${at.map((value) => signed(value.toFixed(2))).join(' ')} M2.5`);
        expect(all).toMatch(
          new RegExp(`\\b${name} ${reaction < 0 ? 'holds' : 'pushes'} ${Math.abs(reaction).toFixed(1)}\\b`),
        );
      }
      for (const { name, bow: value } of cases[0].sites)
        expect(all).toMatch(new RegExp(`\\b${name} \\S+ \\S+ \\+${digits(value)}`));
      expect(all).toContain('Ceramics are brittle.');
      expect(all).toContain('Local codes, regulations and licensed practice apply');
      expect(all).toContain('Preload from a torque scatters by a third');
      for (const [i, sheet] of pages.entries()) {
        expect([Math.round(sheet.width), Math.round(sheet.height)]).toEqual([
          expect.closeTo(width, -0.5),
          expect.closeTo(height, -0.5),
        ]);
        expect(sheet.text).toContain(`Page ${i + 1} of ${pages.length}`);
        expect(sheet.text).toContain(`Flathead ${VERSION}, model ${modelHash(model)}`);
        expect(cut(sheet)).toEqual([]);
      }
    }
    // The page stands in the dark theme; its paper does not.
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const colours = await page.evaluate(() =>
      ['html', 'body', '.report'].map((of) => getComputedStyle(document.querySelector(of)!).backgroundColor),
    );
    expect(colours).toEqual(Array(3).fill('rgb(255, 255, 255)'));
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe('light');
    await page.emulateMedia({ media: null });
  });

  it('keeps hostile names as text, on paper and in a file that needs no network and runs no script', async () => {
    const { page } = visit.bench;
    await settled(page);
    const model = await savedModel(page);
    const [first, ...others] = model.fasteners;
    const hostile: HeadModel = {
      ...model,
      name: HOSTILE,
      note: `=HYPERLINK("x") ${HOSTILE}`,
      fasteners: [{ ...first, name: `<b onclick=1>${'W'.repeat(60)}` }, ...others],
    };
    await page.getByTestId('open-file').setInputFiles({
      name: 'hostile.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(hostile)),
    });
    await settled(page);
    await openReport(page);
    const pages = await pdfPages(await page.pdf({ format: 'A4', printBackground: true }));
    expect(wordsOf(pages)).toContain(HOSTILE);
    expect(pages.flatMap(cut)).toEqual([]);
    for (const { text } of pages) expect(text).toContain('Page ');

    const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId('save-html').click()]);
    const path = await download.path();
    expect(download.suggestedFilename()).toMatch(/^[a-z0-9-]+-report\.html$/);
    const html = await readFile(path, 'utf8');
    expect(html).not.toMatch(/<script|<link|https?:(?!\/\/www\.w3\.org\/)|<img src=x/i);
    const context = await visit.browser.newContext({ offline: true });
    const file = await context.newPage();
    const complaints: string[] = [];
    file.on('console', (message) => complaints.push(message.text()));
    file.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) complaints.push(request.url());
    });
    await file.setContent(html);
    expect(await file.getByTestId('report').textContent()).toBe(await page.getByTestId('report').textContent());
    expect(await file.locator('h1').textContent()).toBe(HOSTILE);
    const styleOf = (of: Page) =>
      of.evaluate(() => {
        const { fontSize, color, fontWeight } = getComputedStyle(document.querySelector('.report h1')!);
        return [fontSize, color, fontWeight];
      });
    expect(await styleOf(file)).toEqual(await styleOf(page));
    expect(await file.locator('image').count()).toBe(await page.locator('.report image').count());
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('is found again by its address, and gives the bench back as it was left', async () => {
    const { page } = visit.bench;
    await settled(page);
    const box = (await page.getByTestId('stage').boundingBox())!;
    const places = async () =>
      Promise.all(['NE', 'SW'].map(async (name) => (await page.getByTestId(`fastener-${name}`).boundingBox())!));
    await page.mouse.move(box.x + box.width * 0.9, box.y + box.height * 0.55);
    const home = await places();
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height * 0.5, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await places())[0].x).not.toBe(home[0].x);
    const turned = await places();
    await page.getByTestId('page-report').click();
    await page.getByTestId('report').waitFor();
    await page.getByTestId('report-author').fill('A. Engineer');
    await page.goBack();
    await page.getByTestId('stage').waitFor();
    expect(await page.getByTestId('report').count()).toBe(0);
    expect(await places()).toEqual(turned);
    await page.goForward();
    await page.reload();
    await page.getByTestId('report').waitFor();
    expect(await page.getByTestId('report-author').inputValue()).toBe('A. Engineer');
    expect(await page.getByTestId('verdict-compact').textContent()).toContain('Fail');
  });

  it('waits for the answer to an edit, and says so where there is none', async () => {
    const { page } = visit.bench;
    await settled(page);
    const field = page.getByTestId('field-sites.columns');
    await field.fill('20');
    await field.blur();
    await page.locator('[data-testid="verdict"][data-stale="refused"]').waitFor();
    await page.getByTestId('page-report').click();
    expect(await page.getByTestId('report-state').textContent()).toContain('no answer yet');
    expect(await page.getByTestId('report').textContent()).toContain('Not of the head as it is now');
    await page.getByTestId('undo').click();
    await openReport(page);
    expect(await page.getByTestId('report-state').count()).toBe(0);
    expect(await page.getByTestId('report').textContent()).not.toContain('Not of the head as it is now');
  });

  it('runs published cases here and now, topic by topic', async () => {
    const { page } = visit.bench;
    await page.getByTestId('page-checks').click();
    const topic = page.locator('[data-testid^="topic-"]').last();
    const first = page.locator('[data-testid^="topic-"]').first();
    await first.getByRole('button', { name: /^Run/ }).click();
    await page.getByTestId('checks-stop').waitFor();
    await first.locator('tr[data-state="within"]').first().waitFor();
    const [expected, here] = await first.locator('tr[data-state="within"]').first().locator('td').allTextContents();
    const [source, value] = [expected, here].map((text) => Number.parseFloat(text.replace('\u2212', '-')));
    expect(Math.abs(value / source - 1)).toBeLessThan(0.02);
    await page.getByTestId('checks-stop').click();
    await page.getByTestId('checks-run').waitFor();
    expect(await topic.locator('tr[data-state="within"]').count()).toBe(0);
  });
});

/** Opens the report and waits until it is of the full answer to the head on the bench. */
async function openReport(page: Page): Promise<void> {
  await page.getByTestId('page-report').click();
  await page.getByTestId('report').waitFor();
  await page.locator('[data-testid="verdict-compact"][data-quality="full"]:not([data-stale])').waitFor();
}

async function onCommandLine(model: HeadModel): Promise<Pick<HeadResult, 'verdict' | 'cases'>> {
  const { code, out } = await flathead(['check', '-', '--json'], JSON.stringify(model));
  if (code !== 0 && code !== 1) throw new Error(`flathead check ended with ${code}: ${out}`);
  return JSON.parse(out);
}

/** The words of all pages in one line. */
function wordsOf(pages: readonly PdfPage[]): string {
  return pages
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

/** Share of a page under its last word, without the footer. */
function emptyShare({ words, height }: PdfPage): number {
  const ends = words.map(({ bottom }) => bottom).filter((bottom) => bottom < height - FOOTER);
  return 1 - Math.max(...ends) / (height - FOOTER);
}

/** Words that the edge of the paper cuts or the printer can not reach. */
function cut({ words, width, height }: PdfPage): string[] {
  return words
    .filter(
      ({ left, right, top, bottom }) =>
        left < PRINTABLE || top < PRINTABLE || right > width - PRINTABLE || bottom > height - PRINTABLE,
    )
    .map(({ text }) => text);
}

function digits(millimetres: number): string {
  const um = Math.abs(millimetres) * 1000;
  return um.toFixed(um >= 100 ? 0 : um >= 10 ? 1 : 2);
}

function signed(text: string): string {
  return text.replace('-', '\u2212');
}
