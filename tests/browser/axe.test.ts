import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { UNDRAWN, visitEach } from './visit.ts';
import { hasBrowser, openWorkbench, settled, switchOn } from './workbench.ts';

/** A state of the page that is looked at, and the way back to the bench. Add those of new pages here. */
interface State {
  readonly name: string;
  enter(page: Page): Promise<unknown>;
  leave?(page: Page): Promise<unknown>;
}

const shut = (page: Page) => page.keyboard.press('Escape');
const type = async (page: Page, testId: string, text: string): Promise<void> => {
  await page.getByTestId(testId).fill(text);
  await page.getByTestId(testId).blur();
};

const STATES: readonly State[] = [
  { name: 'bench', enter: (page) => settled(page) },
  {
    name: 'examples',
    enter: async (page) => {
      await page.getByTestId('examples').click();
      await page.getByRole('menuitem', { name: 'Wren' }).waitFor();
    },
    leave: shut,
  },
  {
    name: 'guided start',
    enter: async (page) => {
      await page.getByTestId('new-head').click();
      await page.getByTestId('start-make').waitFor();
    },
  },
  { name: 'guided start, wrong answer', enter: (page) => type(page, 'start-columns', 'many'), leave: shut },
  {
    name: 'keys',
    enter: async (page) => {
      await page.getByTestId('keys').click();
      await page.getByTestId('keys-sheet').waitFor();
    },
    leave: shut,
  },
  {
    name: 'numbers of a case',
    enter: async (page) => {
      await page.getByTestId('numbers').click();
      await page.getByTestId('numbers-panel').waitFor();
    },
    leave: (page) => page.getByTestId('numbers').click(),
  },
  {
    name: 'every part of the recipe',
    enter: async (page) => {
      for (const part of ['Keep-outs', 'Own materials', 'Method', 'Note'])
        if ((await page.getByTestId(`fold-${part}`).getAttribute('aria-expanded')) === 'false')
          await page.getByTestId(`fold-${part}`).click();
      for (const add of ['add-opening', 'add-rib', 'add-seat', 'add-material', 'add-hot-modulus'])
        await page.getByTestId(add).first().click();
      await page.getByTestId('unfold-fastener-W').click();
      await page.getByTestId('shape-body.openings.0').selectOption('polygon');
    },
  },
  {
    name: 'head refused',
    enter: async (page) => {
      await type(page, 'field-sites.columns', '20');
      await page.locator('[data-stale="refused"]').waitFor();
    },
    leave: (page) => type(page, 'field-sites.columns', '5'),
  },
  {
    name: 'error beside a field',
    enter: (page) => type(page, 'field-body.thickness', '-3'),
    leave: (page) => type(page, 'field-body.thickness', '4.5'),
  },
  {
    name: 'studies, a sweep with its curve',
    enter: async (page) => {
      await page.getByTestId('page-studies').click();
      await page.getByTestId('study-sweep').check({ force: true });
      await page.getByTestId('setup-count').fill('2');
      await page.getByTestId('study-run').click();
      await page.locator('[data-testid="result-sweep"][data-state="done"]').waitFor();
    },
  },
  {
    name: 'studies, a value that is none',
    enter: async (page) => {
      await page.getByTestId('study-tolerance').check({ force: true });
      await page.getByTestId('setup-samples').fill('many');
      await page.getByTestId('study-run').click();
    },
  },
  {
    name: 'budget',
    enter: async (page) => {
      await page.getByTestId('page-budget').click();
      await page.getByTestId('budget-total').waitFor();
    },
    leave: (page) => page.getByTestId('page-bench').click(),
  },
];

/** Findings that keep people out, as `rule at element`. */
async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const violations = await page.evaluate(async () => {
    const { axe: injected } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await injected.run(document, { resultTypes: ['violations'] });
    return violations.map(({ id, impact, nodes }) => ({ id, impact, at: nodes.map(({ html }) => html.slice(0, 160)) }));
  });
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, at }) => at.map((element) => `${id} at ${element}`));
}

describe.skipIf(!hasBrowser)('accessibility', () => {
  const visit = visitEach(UNDRAWN);

  it.each(['light', 'dark'] as const)('has nothing in %s that keeps people out', async (colourScheme) => {
    const { page } = visit.bench;
    await page.emulateMedia({ colorScheme: colourScheme, reducedMotion: 'reduce' });
    await settled(page);
    await page.getByTestId('site-B3').waitFor();
    const found: Record<string, string[]> = {};
    for (const { name, enter, leave } of STATES) {
      await enter(page);
      await page.waitForTimeout(300);
      const here = await findings(page);
      if (here.length > 0) found[name] = here;
      await leave?.(page);
    }
    expect(found).toEqual({});
  });

  it('finds what is wrong', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.evaluate(() => document.querySelector('[data-testid="theme"]')?.removeAttribute('aria-label'));
    expect(await findings(page)).toEqual([expect.stringMatching(/^button-name at .*theme/)]);
  });

  it('has nothing that keeps people out where the head is shown from above for want of WebGL', async () => {
    const flat = await openWorkbench(visit.browser, inject('workbenchUrl'), { webgl: false });
    await flat.page.getByTestId('plan-stage').getByRole('img').waitFor();
    await settled(flat.page);
    expect(await findings(flat.page)).toEqual([]);
    await switchOn(flat.page, 'ribs-columns');
    await settled(flat.page);
    expect(flat.complaints).toEqual([]);
    await flat.close();
  });
});
