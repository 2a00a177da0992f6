import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { hasPdfReader } from '../../scripts/pdf-reader.mjs';
import { pdfPages } from './pdf-words.ts';
import { visitEach } from './visit.ts';
import { bowOnCommandLine, dragFastener, hasBrowser, savedModel, settled, shownBow, switchOn } from './workbench.ts';

/** The job of a first day: from the empty state to a defended verdict on an own head. */
describe.skipIf(!hasBrowser || (!hasPdfReader() && !process.env.CI))('an engineer', () => {
  const visit = visitEach();

  it('makes a 2x3-site head, sees it fail, changes it until it passes, compares, prints, and finds it all again', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('new-head').click();
    await answer(page, 'name', 'Merlin');
    await answer(page, 'columns', '3');
    await answer(page, 'rows', '2');
    await answer(page, 'probes.touchdown', '0,6');
    await answer(page, 'probes.preload', '0,3');
    await page.getByTestId('start-make').click();
    await settled(page);
    const first = await shownBow(page);
    await page.getByTestId('field-limits.bow').fill((0.88 * Number(first)).toFixed(2));
    await page.getByTestId('field-limits.bow').blur();
    await settled(page);
    expect(await page.getByTestId('verdict-outcome').textContent()).toBe('Fail');
    expect(await page.getByTestId('announcement').textContent()).toMatch(/^Fail\. Site \w\d bows/);

    await page.getByTestId('duplicate').click();
    await page.getByTestId('fastener-N').waitFor();
    // Its fasteners lie in mirrors, so S goes inwards with N.
    await (await dragFastener(page, 'N', { x: 0, y: 16 })).release();
    await settled(page);
    expect(Number(await shownBow(page))).toBeLessThan(Number(first));
    await switchOn(page, 'ribs-columns');
    await settled(page);
    expect(await page.getByTestId('verdict-outcome').textContent()).toBe('Pass');
    const model = await savedModel(page);
    const bow = await shownBow(page);
    expect(bow).toBe(await bowOnCommandLine(model));
    const changed = page.getByTestId(`variant-${model.name}`).getByTestId('variant-difference');
    expect(await changed.textContent()).toMatch(/^ribs between columns added.*\bN\b.*\bS\b.* inwards$/);

    await page.getByTestId('compare').click();
    const row = page.getByTestId('comparison-criteria').getByRole('row', { name: /^Bow/ });
    expect(await row.textContent()).toContain(first);
    expect(await row.textContent()).toContain(bow);
    await page.getByTestId('waterfall-step').first().waitFor();

    await page.getByTestId('page-report').click();
    await page.getByTestId('report').waitFor();
    const pages = await pdfPages(await page.pdf({ format: 'A4', printBackground: true }));
    expect(pages.length).toBeGreaterThanOrEqual(4);
    const text = pages.map((sheet) => sheet.text).join('\n');
    expect(text).toContain(model.name);
    expect(text).toContain(`Bow ${bow} µm`);
    expect(text).toContain('Ceramics are brittle.');

    await page.reload();
    await page.getByTestId('report').waitFor();
    await page.getByTestId('page-bench').click();
    await settled(page);
    expect(await savedModel(page)).toEqual(model);
    expect(await shownBow(page)).toBe(bow);
    expect(await page.getByTestId('variant-Merlin').getByTestId('variant-outcome').textContent()).toMatch(/Fail/i);
  });
});

async function answer(page: Page, path: string, text: string): Promise<void> {
  const field = page.getByTestId(`start-${path}`);
  await field.fill(text);
  await field.blur();
}
