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
      // Every site tells its bow.
      expect(await page.locator('[data-testid^="site-"][data-form="none"]').count()).toBe(0);
    },
  );

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
    await page.getByText('Fastener E was put back to the last place that can be solved').waitFor();
    await settled(page);
    const [was, is] = [before, await savedModel(page)].map(({ fasteners }) => fasteners.map(({ at }) => at));
    // To where it was solved on the way, in one step of undo; or all the way, with none.
    if (JSON.stringify(is) !== JSON.stringify(was)) await page.getByTestId('undo').click();
    await settled(page);
    expect(await savedModel(page)).toEqual(before);
    expect(await page.getByTestId('undo').isDisabled()).toBe(true);
  });

  it('names no limit of the contact where the head has none', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('quantity').getByText('Contact').click();
    await page.getByText('The head has no limit for this.').waitFor();
    const legend = page.getByRole('figure', { name: /^Colours/ });
    expect(await legend.getAttribute('aria-label')).toBe('Colours from zero to 0.09 N');
    expect(await legend.textContent()).not.toContain('limit');
  });
});
