import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { UNDRAWN, visitEach } from './visit.ts';
import { bowOnCommandLine, hasBrowser, savedModel, settled, shownBow } from './workbench.ts';

/** Test id of what has the focus. */
const focused = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.activeElement?.getAttribute('data-testid') ?? null);

/** Presses Tab until the focus is on something; fails when it does not come by within so many. */
async function tabTo(page: Page, testId: string, most = 40): Promise<void> {
  for (let i = 0; i < most; i++) {
    if ((await focused(page)) === testId) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${testId} is not within ${most} steps of the Tab key.`);
}

describe.skipIf(!hasBrowser)('keyboard', () => {
  const visit = visitEach(UNDRAWN);

  it('does a job without the mouse: a new head, a fastener moved, taken back, the verdict read', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('site-B3').waitFor();
    // A new head by its answers.
    await page.keyboard.press('n');
    await expect.poll(() => focused(page)).toBe('start-name');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('Typed head');
    await tabTo(page, 'start-columns');
    await page.keyboard.type('4');
    await tabTo(page, 'start-probes.preload');
    await page.keyboard.type('0,6');
    // A probe does not push less on the wafer than before: said beside the field, until that is put right.
    await page.getByText('is less than the preload').first().waitFor();
    await tabTo(page, 'start-probes.touchdown');
    await page.keyboard.type('1,2');
    await tabTo(page, 'start-bow');
    await page.keyboard.type('0.1 mil');
    await tabTo(page, 'start-make');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('verdict');
    await settled(page);
    const made = await savedModel(page);
    expect(made).toMatchObject({ name: 'Typed head', sites: { columns: 4, rows: 2, probes: { preload: 0.6 } } });
    expect(made.limits.bow).toBeCloseTo(0.00254, 9);
    const bow = await shownBow(page);
    expect(bow).toBe(await bowOnCommandLine(made));
    expect(await page.getByTestId('announcement').textContent()).toMatch(/^Fail\. Site \w+ bows/);

    // Said once for a run of moves, not for each.
    await page.evaluate(() => {
      const said: string[] = [];
      Object.assign(window, { said });
      new MutationObserver(() =>
        said.push(document.querySelector('[data-testid="announcement"]')?.textContent ?? ''),
      ).observe(document.querySelector('[data-testid="announcement"]')!, {
        childList: true,
        characterData: true,
        subtree: true,
      });
    });
    await page.getByTestId('fastener-NW').waitFor();
    await page.keyboard.press('f');
    await expect.poll(() => focused(page)).toBe('fastener-NW');
    await page.keyboard.down('ArrowRight');
    for (let i = 0; i < 3; i++) await page.keyboard.down('ArrowRight');
    await page.keyboard.up('ArrowRight');
    await expect.poll(() => shownBow(page)).not.toBe(bow);
    await settled(page);
    const { fasteners } = await savedModel(page);
    const [x, y] = made.fasteners[0].at;
    expect(fasteners[0].at).toEqual([expect.closeTo(x + 2, 9), y]);
    expect(await page.evaluate(() => Reflect.get(window, 'said').length)).toBe(1);

    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await savedModel(page)).toEqual(made);
    await page.keyboard.press('v');
    expect(await focused(page)).toBe('verdict');
  });

  it('skips past bar and recipe, shows the focus, and brings it back from what lies over the page', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the verdict');
    await page.keyboard.press('Enter');
    expect(await focused(page)).toBe('verdict');
    await page.keyboard.press('r');
    expect(await focused(page)).toBe('fold-Body');
    // Every stop shows that it has the focus: by an outline, or by the frame around it.
    const bare = new Set<string>();
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      const [id, seen] = await page.evaluate(() => {
        const element = document.activeElement!;
        const marked = (it: Element | null): boolean => {
          if (it === null) return false;
          const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(it);
          return (outlineStyle !== 'none' && outlineWidth !== '0px') || boxShadow !== 'none';
        };
        const edge = getComputedStyle(element).borderColor;
        const focusColour = getComputedStyle(document.documentElement).getPropertyValue('--focus').trim();
        const probe = document.createElement('i');
        probe.style.color = focusColour;
        document.body.append(probe);
        const same = edge.startsWith(getComputedStyle(probe).color);
        probe.remove();
        return [element.outerHTML.slice(0, 120), marked(element) || marked(element.parentElement) || same] as const;
      });
      if (!seen) bare.add(id);
    }
    expect([...bare]).toEqual([]);

    await page.getByTestId('keys').focus();
    await page.keyboard.press('?');
    await page.getByTestId('keys-sheet').waitFor();
    expect(await page.getByTestId('keys-sheet').getByText('New head from few questions').count()).toBe(1);
    await page.keyboard.press('Escape');
    await page.getByTestId('keys-sheet').waitFor({ state: 'detached' });
    expect(await focused(page)).toBe('keys');
  });

  it('leaves letters to fields, and to who switched them off', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('field-name').focus();
    await page.keyboard.type('?n');
    expect(await page.getByTestId('start').count()).toBe(0);
    await page.getByTestId('keys').focus();
    await page.keyboard.press('?');
    await page.getByTestId('single-keys').focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Escape');
    await page.getByTestId('keys-sheet').waitFor({ state: 'detached' });
    await page.keyboard.press('n');
    await page.waitForTimeout(300);
    expect(await page.getByTestId('start').count()).toBe(0);
  });
});
