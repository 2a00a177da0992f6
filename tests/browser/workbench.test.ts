import { readFile } from 'node:fs/promises';
import type { HeadModel } from '@flathead/solver';
import { describe, expect, inject, it } from 'vitest';
import { visitEach } from './visit.ts';
import {
  bowOnCommandLine,
  colouredShare,
  dragFastener,
  drawn,
  hasBrowser,
  openWorkbench,
  savedModel,
  settled,
  shownBow,
  switchOn,
} from './workbench.ts';

/** File of a head in models/. */
const modelFile = (name: string): string => new URL(`../../models/${name}`, import.meta.url).pathname;

describe.skipIf(!hasBrowser)('workbench', () => {
  const visit = visitEach({ glides: false });

  it('opens with Kestrel solved, and shows what the command line says', async () => {
    const { page } = visit.bench;
    await page.getByTestId('verdict-outcome').waitFor();
    expect(await page.getByTestId('verdict-outcome').textContent()).toBe('Fail');

    await settled(page);
    const shipped: HeadModel = JSON.parse(await readFile(modelFile('kestrel-baseline.json'), 'utf8'));
    const { $schema: _, ...model } = await savedModel(page);
    const { $schema: __, ...expected } = shipped;
    expect(model).toEqual(expected);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
  });

  it('follows a fastener dragged with the mouse to the bow that the command line gives', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    const bowBefore = await shownBow(page);

    await page.getByTestId('mirror').selectOption('off');
    const drag = await dragFastener(page, 'NE', { x: -60, y: 30 });
    await expect.poll(() => shownBow(page)).not.toBe(bowBefore);
    await drag.release();
    await settled(page);

    const model = await savedModel(page);
    const moved = model.fasteners.filter(({ at }, i) => String(at) !== String(before.fasteners[i].at));
    expect(moved.map(({ name }) => name)).toEqual(['NE']);
    const bow = await shownBow(page);
    expect(bow).not.toBe(bowBefore);
    expect(bow).toBe(await bowOnCommandLine(model));
  });

  it('works the same where memory can not be shared between threads', async () => {
    expect(await visit.bench.page.evaluate(() => crossOriginIsolated)).toBe(true);
    const plain = await openWorkbench(visit.browser, inject('workbenchUrl'), { isolated: false });
    const { page, complaints } = plain;
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(false);
    await settled(page);
    const { release } = await dragFastener(page, 'E', { x: -60, y: 10 });
    await release();
    await settled(page);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(await savedModel(page)));
    expect(complaints).toEqual([]);
    await plain.close();
  });

  it('keeps the stage where it is while a drag turns a head that fails into one that passes', async () => {
    const { page } = visit.bench;
    await settled(page);
    const top = async () => (await page.getByTestId('stage').boundingBox())?.y;
    const before = await top();
    const drag = await dragFastener(page, 'E', { x: -90, y: -10 });
    await expect.poll(() => page.getByTestId('verdict-outcome').textContent()).toBe('Pass');
    expect(await top()).toBe(before);
    await drag.release();
    await settled(page);
    expect(await page.getByTestId('verdict-outcome').textContent()).toBe('Pass');
  });

  it('moves the fasteners opposite along where they lie in mirrors, unless that is switched off', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    expect(await page.getByTestId('mirror').inputValue()).toBe('both');
    const drag = await dragFastener(page, 'NE', { x: -60, y: 30 });
    await drag.release();
    await settled(page);

    const model = await savedModel(page);
    const at = (name: string) => model.fasteners.find((fastener) => fastener.name === name)!.at;
    const [x, y] = at('NE');
    expect([x, y]).not.toEqual(before.fasteners.find(({ name }) => name === 'NE')!.at);
    expect([at('NW'), at('SE'), at('SW')]).toEqual([
      [-x, y],
      [x, -y],
      [-x, -y],
    ]);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    expect(await page.getByTestId('mirror-lines').getAttribute('data-axes')).toBe('both');
    expect(await page.locator('[data-linked]').count()).toBe(3);
    await page.keyboard.press('m');
    expect(await page.getByTestId('mirror').inputValue()).toBe('off');
    expect(await page.getByTestId('mirror-lines').count()).toBe(0);
  });

  it('bows less with ribs between the columns', async () => {
    const { page } = visit.bench;
    await settled(page);
    const without = Number(await shownBow(page));
    await switchOn(page, 'ribs-columns');
    await settled(page);

    const model = await savedModel(page);
    expect(model.frame?.ribs).toMatchObject([{ between: 'columns' }]);
    const bow = await shownBow(page);
    expect(Number(bow)).toBeLessThan(without);
    expect(bow).toBe(await bowOnCommandLine(model));
  });

  it('refuses a bad number beside its field and keeps the last good answer', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    const bow = await shownBow(page);
    const field = page.getByTestId('field-body.thickness');
    const refusals = [
      ['-3', /expected 0\.001 or more/],
      ['1e300', /expected 1000 or less/],
      ['thick', /no number/],
      ['', /Empty/],
    ] as const;
    for (const [text, reason] of refusals) {
      await field.fill(text);
      await field.blur();
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      const trouble = page.locator(`[id="${await field.getAttribute('aria-describedby')}"]`);
      expect(await trouble.textContent()).toMatch(reason);
      const [box, below] = await Promise.all([field.boundingBox(), trouble.boundingBox()]);
      expect(below!.y - (box!.y + box!.height)).toBeLessThan(20);
      await page.getByText('Last good answer shown').waitFor();
      expect(await shownBow(page)).toBe(bow);
      expect(await savedModel(page)).toEqual(before);
    }

    await field.fill('6,5');
    await settled(page);
    expect((await savedModel(page)).body.thickness).toBe(6.5);
    expect(Number(await shownBow(page))).toBeLessThan(Number(bow));
  });

  it('keeps the last good answer when the solver refuses a head, and says why', async () => {
    const { page } = visit.bench;
    await settled(page);
    const bow = await shownBow(page);
    const field = page.getByTestId('field-sites.columns');
    await field.fill('20');
    await field.blur();
    await page.locator('[data-testid="verdict"][data-stale="refused"]').waitFor();
    expect(await page.getByRole('alert').filter({ hasText: 'Last good answer shown' }).count()).toBe(1);
    expect(await shownBow(page)).toBe(bow);
    expect((await savedModel(page)).sites.columns).toBe(20);

    await page.getByTestId('undo').click();
    await settled(page);
    expect(await field.inputValue()).toBe('5');
    expect(await shownBow(page)).toBe(bow);
  });

  it('undoes a drag in one step, and redoes it', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    const bow = await shownBow(page);
    const drag = await dragFastener(page, 'SW', { x: 70, y: -40 });
    await drag.release();
    await settled(page);
    const after = await savedModel(page);
    const moved = await shownBow(page);
    expect(moved).not.toBe(bow);

    await page.getByTestId('undo').click();
    await settled(page);
    expect(await savedModel(page)).toEqual(before);
    expect(await shownBow(page)).toBe(bow);
    expect(await page.getByTestId('undo').isDisabled()).toBe(true);

    await page.getByTestId('redo').click();
    await settled(page);
    expect(await savedModel(page)).toEqual(after);
    expect(await shownBow(page)).toBe(moved);
  });

  it('opens a model file, and leaves the head alone when a file holds none', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('open-file').setInputFiles(modelFile('kestrel-both.json'));
    await expect.poll(() => page.getByTestId('verdict-outcome').textContent()).toBe('Pass');
    await settled(page);
    const model = await savedModel(page);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));

    const broken = { name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('{ "flathead": 1,') };
    await page.getByTestId('open-file').setInputFiles(broken);
    await page.getByText('broken.json was not opened').waitFor();
    expect(await savedModel(page)).toEqual(model);
  });

  // 50 ms is the bound on a machine that draws with its graphics processor. Here Chromium draws in software, on the
  // processors that the solver works on too, and a task that waits for a frame takes as long as the frame. The page's own
  // code is held to the bound more closely.
  it('starts a fresh solver when the one it had dies', async () => {
    const { page } = visit.bench;
    await settled(page);
    const bow = await shownBow(page);
    await page.workers()[0].evaluate(() => self.close());
    await page.getByText('The solver was restarted').waitFor();
    await page.getByTestId('field-body.thickness').fill('6');
    await settled(page);
    expect(Number(await shownBow(page))).toBeLessThan(Number(bow));
  });

  it.each(['light', 'dark'] as const)('draws itself in %s', async (colourScheme) => {
    const { page } = visit.bench;
    await page.emulateMedia({ colorScheme: colourScheme });
    await settled(page);
    await page.getByTestId('site-B3').waitFor();
    await drawn(page);
    // The deflection glides to its full size.
    await page.waitForTimeout(500);
    // The painted body alone covers more; a stage that was not drawn has its labels only.
    expect(await colouredShare(page)).toBeGreaterThan(0.05);
  });
});
