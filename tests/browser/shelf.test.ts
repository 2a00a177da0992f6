import { readFile } from 'node:fs/promises';
import type { HeadModel } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { UNDRAWN, visitEach } from './visit.ts';
import { bowOnCommandLine, dragFastener, hasBrowser, savedModel, settled, shownBow } from './workbench.ts';

/** File of a head in models/. */
const modelFile = (name: string): string => new URL(`../../models/${name}`, import.meta.url).pathname;
const shipped = async (name: string): Promise<HeadModel> => JSON.parse(await readFile(modelFile(name), 'utf8'));

/** Kestrel as it is and, on the bench, as a copy of another thickness. */
async function twoVariants(page: Page): Promise<void> {
  await settled(page);
  await page.getByTestId('duplicate').click();
  await page.getByTestId('field-body.thickness').fill('6');
  await page.getByTestId('field-body.thickness').blur();
  await settled(page);
}

const cards = (page: Page) => page.getByTestId('shelf').locator('li');
const names = (page: Page) => cards(page).locator('button[aria-current]').allTextContents();
const cardOf = (page: Page, name: string) => page.getByTestId(`variant-${name}`);

describe.skipIf(!hasBrowser)('the shelf', () => {
  const visit = visitEach(UNDRAWN);

  it('holds variants with their bow and difference in words, and switches between them at once', async () => {
    const { page } = visit.bench;
    await settled(page);
    const [before, bow] = [await savedModel(page), await shownBow(page)];
    await twoVariants(page);
    const thicker = await shownBow(page);
    const [first, second] = [cards(page).nth(0), cards(page).nth(1)];
    expect(await first.getByTestId('variant-bow').textContent()).toBe(bow);
    expect(await second.getByTestId('variant-bow').textContent()).toBe(thicker);
    expect(thicker).toBe(await bowOnCommandLine(await savedModel(page)));
    expect(await second.getByTestId('variant-difference').textContent()).toBe('body 4.5 → 6 mm');

    // The answer is there as the variant comes on the bench: no wait for a solver.
    await first.locator('button[aria-current]').click();
    await expect.poll(() => page.getByTestId('verdict').getAttribute('data-quality'), { timeout: 1000 }).toBe('full');
    expect(await shownBow(page)).toBe(bow);
    expect(await savedModel(page)).toEqual(before);
  });

  it('renames, moves by key and by mouse, and deletes with undo', async () => {
    const { page } = visit.bench;
    await twoVariants(page);
    const [first, second] = await names(page);
    const name = cards(page).nth(1).locator('button[aria-current]');
    await name.focus();
    await page.keyboard.press('F2');
    await page.getByTestId('variant-rename').fill('Thick');
    await page.keyboard.press('Enter');
    expect(await names(page)).toEqual([first, 'Thick']);
    expect(await page.getByTestId('field-name').inputValue()).toBe('Thick');

    await cardOf(page, 'Thick').locator('button[aria-current]').focus();
    await page.keyboard.press('Alt+ArrowLeft');
    expect(await names(page)).toEqual(['Thick', first]);
    await cardOf(page, 'Thick').dragTo(cardOf(page, first));
    await expect.poll(() => names(page)).toEqual([first, 'Thick']);

    await cardOf(page, 'Thick').locator('button[aria-current]').focus();
    await page.keyboard.press('Delete');
    expect(await page.getByTestId('field-name').inputValue()).toBe(first);
    await page.getByText('Thick was deleted').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await expect.poll(() => names(page)).toEqual([first, 'Thick']);
    // Four steps back: the return, the deletion, and both moves; the fifth takes back the name.
    for (let i = 0; i < 5; i++) await page.keyboard.press('Control+z');
    await expect.poll(() => names(page)).toEqual([first, second]);
  });

  it('solves variants in the background, also after that solver was killed', async () => {
    const { page } = visit.bench;
    await settled(page);
    const [both, ribs] = [await shipped('kestrel-both.json'), await shipped('kestrel-ribs.json')];
    const book = { workbook: 1, bench: 0, variants: [both, ribs] };
    const buffer = Buffer.from(JSON.stringify(book));
    await page.getByTestId('open-file').setInputFiles({ name: 'two.json', mimeType: 'application/json', buffer });
    const started = page.waitForEvent('worker', (worker) => worker.url().includes('solver-worker'));
    await settled(page);
    const behind = await started;
    // A worker is missed by the lock that it holds: from then on.
    await behind
      .evaluate(async () => {
        const held = async (): Promise<boolean> =>
          (await navigator.locks.query()).held?.some(({ name }) => name === self.name) ?? false;
        while (!(await held())) await new Promise((resolve) => setTimeout(resolve, 20));
        self.close();
      })
      .catch(() => {});
    const card = cardOf(page, ribs.name);
    await card.getByTestId('variant-bow').waitFor();
    expect(await card.getByTestId('variant-bow').textContent()).toBe(await bowOnCommandLine(ribs));
  });

  it('leaves the stage its size while a fastener of a variant is dragged', async () => {
    const { page } = visit.bench;
    await twoVariants(page);
    const { release, x, y } = await dragFastener(page, 'NE', { x: -20, y: 0 });
    const seen = await page.evaluateHandle(() => {
      const heights: number[] = [];
      const stage = document.querySelector('[data-testid="stage"]');
      if (stage === null) throw new Error('There is no stage.');
      new ResizeObserver(() => heights.push(stage.getBoundingClientRect().height)).observe(stage);
      return heights;
    });
    const first = await shownBow(page);
    for (let k = 0; k < 12; k++) {
      await page.mouse.move(x - 20 - 3 * k, y + 2 * (k % 3));
      await page.waitForTimeout(100);
    }
    await expect.poll(() => shownBow(page)).not.toBe(first);
    await release();
    await settled(page);
    expect(new Set(await seen.jsonValue()).size).toBe(1);
  });

  it('compares two variants, and adds up what each change contributes to the difference of their bows', async () => {
    const { page } = visit.bench;
    await settled(page);
    const bow = await shownBow(page);
    await page.getByTestId('open-file').setInputFiles(modelFile('kestrel-both.json'));
    await expect.poll(() => page.getByTestId('verdict-outcome').textContent()).toBe('Pass');
    await settled(page);
    const better = await shownBow(page);
    await page.getByTestId('compare').click();
    await page.getByRole('img', { name: /less that of/ }).waitFor();
    // Maps stand in one row; sites tell in numbers what they differ by, and the shelf's words say why.
    const tops = await page
      .getByTestId('linked-map')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top));
    expect(new Set(tops).size).toBe(1);
    const [from, to, by] = await page
      .getByTestId('comparison-sites')
      .locator('tbody tr')
      .evaluateAll((rows) => rows.map((one) => Number(one.children[3].textContent?.replace('−', '-'))));
    expect([from.toFixed(1), to.toFixed(1)]).toEqual([bow, better]);
    expect(by).toBeCloseTo(to - from, 9);
    expect(await page.getByTestId('comparison-changes').locator('li').count()).toBeGreaterThan(1);
    const legend = await page.getByTestId('comparison-legend').textContent();
    expect(legend).toMatch(/lower, −\d/);
    expect(legend).toMatch(/higher/);
    const row = page.getByTestId('comparison-criteria').getByRole('row', { name: /^Bow/ });
    expect(await row.textContent()).toContain(bow);
    expect(await row.textContent()).toContain(better);
    await page.getByTestId('section-chart').waitFor();

    await page.getByTestId('waterfall-step').first().waitFor();
    const amounts = async () =>
      (await page.getByTestId('waterfall-amount').allTextContents()).map((text) => Number(text.replace('−', '-')));
    const check = async (): Promise<readonly number[]> => {
      const [from, ...rest] = await amounts();
      const to = rest.pop()!;
      expect([from, to]).toEqual([Number(bow), Number(better)]);
      expect(Math.round(10 * rest.reduce((sum, amount) => sum + amount, from))).toBe(Math.round(10 * to));
      return rest;
    };
    const inOrder = await check();
    expect(inOrder.length).toBeGreaterThan(1);
    const first = await page.getByTestId('waterfall-order').first().textContent();
    await page.getByRole('button', { name: `Make later: ${first}` }).click();
    await expect
      .poll(async () => (await page.getByTestId('waterfall-order').nth(1).textContent()) === first)
      .toBe(true);
    await page.getByTestId('waterfall-step').first().waitFor();
    expect(await check()).not.toEqual(inOrder);

    const maps = page.getByTestId('linked-map');
    await page.getByRole('button', { name: 'Larger' }).click();
    const transforms = await maps.evaluateAll((all) => all.map((map) => (map as HTMLElement).style.transform));
    expect(new Set(transforms).size).toBe(1);
    expect(transforms[0]).toContain('scale(1.5)');
  });
});
