import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { UNDRAWN, visitEach } from './visit.ts';
import { dragFastener, hasBrowser, savedModel, settled } from './workbench.ts';

const kept = (page: Page) => page.locator('[data-testid="kept"][data-status="kept"]').waitFor();

async function edit(page: Page, thickness: string): Promise<void> {
  await page.getByTestId('field-body.thickness').fill(thickness);
  await page.getByTestId('field-body.thickness').blur();
}

const thickness = (page: Page) => page.getByTestId('field-body.thickness').inputValue();

/** Reads or changes what the page keeps, by the browser's own database. */
function stored(
  page: Page,
  change: Readonly<Record<string, unknown>> = {},
): Promise<Record<string, { text?: string }>> {
  return page.evaluate(async (entries) => {
    const wait = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await wait(indexedDB.open('keyval-store'));
    const store = database.transaction('keyval', 'readwrite').objectStore('keyval');
    for (const [key, value] of Object.entries(entries)) await wait(store.put(value, key));
    const [keys, values] = [await wait(store.getAllKeys()), await wait(store.getAll())];
    database.close();
    return Object.fromEntries(keys.map((key, i) => [String(key), values[i]]));
  }, change);
}

describe.skipIf(!hasBrowser)('keeping work', () => {
  const visit = visitEach(UNDRAWN);

  it('keeps all variants over a reload, and a workbook file over everything', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('duplicate').click();
    await edit(page, '6');
    await kept(page);
    await page.getByTestId('files').click();
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId('save-workbook').click()]);
    const book = JSON.parse(await readFile(await download.path(), 'utf8'));
    expect([book.workbook, book.bench, book.variants.length]).toEqual([1, 1, 2]);

    await page.reload();
    await page.getByText('Your last work is back').waitFor();
    expect(await savedModel(page)).toEqual(book.variants[1]);
    await page.getByRole('button', { name: 'Start from Kestrel' }).click();
    expect(await page.getByTestId('shelf').locator('li').count()).toBe(1);

    // Dropped on the page, the file brings it all back; so does the list of recent files.
    const text = JSON.stringify(book);
    const drop = await page.evaluateHandle((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], 'all.workbook.json', { type: 'application/json' }));
      return data;
    }, text);
    await page.getByTestId('verdict').dispatchEvent('drop', { dataTransfer: drop });
    await expect.poll(() => page.getByTestId('shelf').locator('li').count()).toBe(2);
    await page.getByTestId('files').click();
    expect(await page.getByTestId('recent').first().textContent()).toContain('all.workbook.json');
    expect(await page.getByTestId('recent').first().textContent()).toMatch(/2 heads, [0-9a-f]{12}/);
  });

  it('keeps the last of a drag that the closing of the tab cut', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    await dragFastener(page, 'NE', { x: -60, y: 30 });
    await page.reload();
    await page
      .getByText('Your last work is back')
      .waitFor({ timeout: 10_000 })
      .catch(() => {});
    const after = await savedModel(page);
    const at = (name: string) => (model: typeof after) => model.fasteners.find((f) => f.name === name)!.at;
    expect(at('NE')(after)).not.toEqual(at('NE')(before));
  });

  it('falls back to the generation before when the write of the last was cut, and says so', async () => {
    const { page } = visit.bench;
    await settled(page);
    await edit(page, '6');
    await kept(page);
    await edit(page, '7');
    await kept(page);
    const held = await stored(page);
    const last = Object.keys(held).find((key) => held[key].text?.includes('"thickness":7,'))!;
    await stored(page, { [last]: { ...held[last], text: held[last].text!.slice(0, 300) } });
    await page.reload();
    await page.getByText('The last of your work could not be read').waitFor();
    expect(await thickness(page)).toBe('6');
    await edit(page, '8');
    await kept(page);
    expect(Object.keys(await stored(page))).toContain('flathead-aside-1');
  });

  it('leaves the work of a newer version alone, and says so', async () => {
    const { page } = visit.bench;
    await settled(page);
    const newer = { counter: 1e6, at: 0, text: '{"workbook":3,"heads":[]}' };
    await stored(page, { 'flathead-workbook-3-even': newer });
    await page.reload();
    await page.getByText('A newer version of this page has work here').waitFor();
    await edit(page, '6');
    await kept(page);
    expect((await stored(page))['flathead-workbook-3-even']).toEqual(newer);

    const buffer = Buffer.from('{"workbook":3}');
    await page.getByTestId('open-file').setInputFiles({ name: 'new.json', mimeType: 'application/json', buffer });
    await page.getByText('new.json was not opened').waitFor();
    await page.getByText(/format version 3; this page reads versions 1 to 2/).waitFor();
    expect(await thickness(page)).toBe('6');
  });

  it('says when the storage is full; the work stays and can be saved', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      };
    });
    await edit(page, '6');
    await page.getByText('Your work is not being kept').waitFor();
    await page.getByText(/no room left for this page/).waitFor();
    expect(await page.getByTestId('kept').textContent()).toBe('Not kept');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the workbook' }).click(),
    ]);
    const book = JSON.parse(await readFile(await download.path(), 'utf8'));
    expect(book.variants[0].body.thickness).toBe(6);
    expect((await savedModel(page)).body.thickness).toBe(6);
  });

  it('tells a second tab, which writes nothing over the first until asked to go on', async () => {
    const { page } = visit.bench;
    await settled(page);
    await edit(page, '6');
    await kept(page);
    const second = await page.context().newPage();
    await second.goto(page.url());
    await second.getByText('Your work is open in another tab').waitFor();
    expect(await thickness(second)).toBe('6');
    await edit(second, '9');
    await edit(page, '7');
    await kept(page);
    await second.waitForTimeout(1000);
    expect(JSON.stringify(await stored(page))).not.toContain('\\"thickness\\":9,');

    await second.getByRole('button', { name: 'Go on here' }).click();
    await kept(second);
    await page.getByText('Your work is open in another tab').waitFor();
    expect([await thickness(page), await thickness(second)]).toEqual(['7', '9']);
    // What the first tab kept is not lost.
    await second.getByTestId('files').click();
    await second.getByTestId('recent').filter({ hasText: 'From the other tab' }).click();
    await expect.poll(() => thickness(second)).toBe('7');
    await second.close();
  });

  it('copies a link that brings the head to another visitor as a variant, and refuses a hostile one', async () => {
    const { page } = visit.bench;
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await settled(page);
    await edit(page, '6');
    await page.getByTestId('files').click();
    await page.getByTestId('copy-link').click();
    await page.getByText('Link copied').waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    await edit(page, '7');
    await kept(page);
    await page.goto(link);
    await page.getByText('A head came with the link').waitFor();
    expect(await thickness(page)).toBe('6');
    expect(await page.getByTestId('shelf').locator('li').count()).toBe(2);
    expect(new URL(page.url()).hash).toBe('');

    await page.evaluate(() => {
      location.hash = '#head=%3Cscript%3E';
    });
    await page.getByText('The link was not opened').waitFor();
    expect(await page.getByTestId('shelf').locator('li').count()).toBe(2);
  });
});
