import { describe, expect, it } from 'vitest';
import { visitEach } from './visit.ts';
import { dragHandle, drawn, hasBrowser, savedModel, settled } from './workbench.ts';

describe.skipIf(!hasBrowser)('bench', () => {
  const visit = visitEach();

  it.each([
    [1280, 720],
    [1024, 768],
    [1920, 1080],
  ])(
    'leaves the stage its room at %i by %i with section and shelf asked for, and no tool over another',
    async (width, height) => {
      const { page } = visit.bench;
      await page.setViewportSize({ width, height });
      await settled(page);
      await drawn(page);
      await page.getByTestId('duplicate').click();
      await page.getByTestId('section').click();
      await settled(page);
      const box = async (name: string) => (await page.getByTestId(name).boundingBox())!;
      await expect.poll(async () => (await box('stage')).height / height).toBeGreaterThan(0.42);
      expect((await box('section-chart')).height).toBeGreaterThan(80);
      const tools = await Promise.all(['mirror', 'quantity', 'signed', 'play', 'section'].map(box));
      for (const [i, a] of tools.entries())
        for (const b of tools.slice(i + 1))
          expect(a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y).toBe(
            true,
          );
      expect(await page.evaluate(() => document.querySelector('header')!.scrollWidth <= innerWidth)).toBe(true);
      // Every site tells its bow, the worst with its name and all digits.
      expect(await page.locator('[data-testid^="site-"][data-form="none"]').count()).toBe(0);
      const worst = page.locator('[data-testid^="site-"][data-worst]');
      expect(await worst.getByText('A3', { exact: true }).isVisible()).toBe(true);
      expect(
        await worst
          .getByText(/^\+?80\.1$/)
          .filter({ visible: true })
          .count(),
      ).toBe(1);
      // Every screw can be seen and grabbed.
      const taken = [await box('legend')];
      for (const name of ['NW', 'NE', 'SW', 'SE', 'W', 'E']) {
        const handle = await box(`fastener-${name}`);
        for (const { x, y, width, height } of taken)
          expect(
            handle.x + handle.width <= x ||
              x + width <= handle.x ||
              handle.y + handle.height <= y ||
              y + height <= handle.y,
          ).toBe(true);
      }
    },
  );

  it('keeps texts off each other and off the screws where fasteners stand close to the sites, and while one is dragged', async () => {
    const { page } = visit.bench;
    await page.setViewportSize({ width: 1280, height: 720 });
    await settled(page);
    await drawn(page);
    const places: Readonly<Record<string, readonly [number, number]>> = {
      NW: [-17.5, 17],
      NE: [17.5, 17],
      SW: [-17.5, -17],
      SE: [17.5, -17],
      W: [0, 20.7],
      E: [0, -20.7],
    };
    const model = await savedModel(page);
    const close = {
      ...model,
      name: 'Close',
      fasteners: model.fasteners.map((one) => ({ ...one, at: places[one.name] })),
    };
    const buffer = Buffer.from(JSON.stringify(close));
    await page.getByTestId('open-file').setInputFiles({ name: 'close.json', mimeType: 'application/json', buffer });
    await expect.poll(() => page.getByTestId('field-name').inputValue()).toBe('Close');
    await settled(page);
    /** Pairs of texts, or of a text and the middle of a screw, that lie on each other. */
    const crowded = () =>
      page.getByTestId('stage').evaluate((stage) => {
        const seen = (element: Element): boolean => getComputedStyle(element).visibility === 'visible';
        const boxes = (selector: string) =>
          [...stage.querySelectorAll(selector)].filter(seen).map((one) => {
            const { left, top, right, bottom } = one.getBoundingClientRect();
            return { said: one.textContent, left, top, right, bottom };
          });
        const texts = [...boxes('[data-testid^="site-"]'), ...boxes('[data-testid^="fastener-"] > span')];
        const screws = boxes('[data-testid^="fastener-"]').map(({ said, left, top, right, bottom }) => {
          const [x, y] = [(left + right) / 2, (top + bottom) / 2];
          return { said: `screw ${said}`, left: x - 3, top: y - 3, right: x + 3, bottom: y + 3 };
        });
        return texts.flatMap((a, i) =>
          [...texts.slice(i + 1), ...screws]
            .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
            .map((b) => `${a.said} on ${b.said}`),
        );
      });
    await expect.poll(crowded).toEqual([]);
    expect(await page.locator('[data-testid^="fastener-"] > span:not([data-out])').count()).toBe(6);
    expect(await page.locator('[data-testid^="site-"][data-worst]').isVisible()).toBe(true);

    await page.getByTestId('mirror').selectOption('off');
    const { release } = await dragHandle(page, 'fastener-NE', { x: 10, y: -8 });
    await page.getByText('screw head to field A5').waitFor();
    await expect.poll(async () => (await crowded()).filter((pair) => /^NE|on screw/.test(pair))).toEqual([]);
    await page.keyboard.press('Escape');
    await release();
  });

  it('puts a fastener back that was let go where the head is refused, and says why, within its one step of undo', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await page.getByTestId('mirror').selectOption('off');
    const before = await savedModel(page);
    const from = (await page.getByTestId('fastener-E').boundingBox())!;
    const site = (await page.getByTestId('site-A5').boundingBox())!;
    const by = {
      x: site.x + site.width / 2 - from.x - from.width / 2,
      y: site.y + site.height / 2 - from.y - from.height / 2,
    };
    const { release } = await dragHandle(page, 'fastener-E', by);
    await page.getByTestId('drag-refused').waitFor();
    await release();
    const told = page.getByText('Fastener E was put back to the last place that can be solved');
    await told.waitFor();
    await settled(page);
    const [was, is] = [before, await savedModel(page)].map(({ fasteners }) => fasteners.map(({ at }) => at));
    // To where it was solved on the way, in one step of undo; or all the way, with none.
    if (JSON.stringify(is) !== JSON.stringify(was)) await page.getByTestId('undo').click();
    await settled(page);
    // Gone with the step that it was about, or by itself.
    await told.waitFor({ state: 'detached' });
    expect(await savedModel(page)).toEqual(before);
    expect(await page.getByTestId('undo').isDisabled()).toBe(true);
  });

  it('draws the head flat and without perspective from above, and the fasteners that push with a word', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await page.getByText('From above', { exact: true }).click();
    expect(await page.getByTestId('exaggeration').textContent()).toBe('flat');
    const at = async (name: string, of = 'fastener') => {
      const { x, y, width, height } = (await page.getByTestId(`${of}-${name}`).boundingBox())!;
      return [x + width / 2, y + height / 2];
    };
    // Screws stand on one height above the plan: corners of a rectangle of 100 by 62 mm, to a pixel.
    await expect.poll(async () => Math.abs((await at('NW'))[0] - (await at('SW'))[0])).toBeLessThan(1);
    const [[x0, y0], [x1, y1]] = [await at('NW'), await at('SE')];
    expect(Math.abs((x1 - x0) / (y1 - y0) - 100 / 62)).toBeLessThan(0.005);
    // Sites, some millimetres higher, have the same scale: A1 and A5 are 36.8 mm apart.
    const sites = (await at('A5', 'site'))[0] - (await at('A1', 'site'))[0];
    expect(Math.abs(sites / 36.8 / ((x1 - x0) / 100) - 1)).toBeLessThan(0.01);

    await page.getByTestId('fastener-W').focus();
    for (let i = 0; i < 22; i++) await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(await page.getByTestId('fastener-NW').textContent()).toMatch(/^NW pushes \d/);
    expect(await page.getByTestId('fastener-W').textContent()).toMatch(/^W \d/);
    await page.getByText('1 remark', { exact: true }).click();
    await page.getByText(/Fasteners NW, NE, SW, SE push the head off the board/).waitFor();
  });

  it('names no limit of the contact where the head has none', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('quantity').getByText('Contact').click();
    await page.getByText('The head has no limit for this.').waitFor();
    const legend = page.getByRole('figure', { name: /^Colours/ });
    expect(await legend.getAttribute('aria-label')).toBe('Colours from 0.09 to 0 N');
    expect(await legend.textContent()).not.toContain('limit');
  });
});
