import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { HeadModel, Verdict } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { flathead } from '../command-line/run.ts';
import { UNDRAWN, visitEach } from './visit.ts';
import { bowOnCommandLine, hasBrowser, savedModel, settled, shownBow } from './workbench.ts';

describe.skipIf(!hasBrowser)('studies', () => {
  const visit = visitEach(UNDRAWN);

  it('finds a placement clear of the keep-outs, and accepts it as a variant that passes', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    await open(page, 'placement');
    await page.getByTestId('setup-step').fill('4');
    await run(page, 'placement');
    expect(await page.getByTestId('result-placement').textContent()).toMatch(/Best of all \d+ placements/);
    await page.getByTestId('placement-accept').click();
    await page.getByTestId('study-changed').waitFor();
    await page.getByTestId('page-bench').click();
    await settled(page);
    expect(await page.getByTestId('verdict-outcome').first().textContent()).toBe('Pass');
    const placed = await savedModel(page);
    expect(placed.name).toBe(`${before.name}, placed`);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(placed));
    // Heads of M2.5 screws are 4.5 mm wide (ISO 4762), the keep-outs 64 by 8 mm about (0, +-31) with 0.5 mm of clearance.
    for (const { name, at } of placed.fasteners) {
      const gap = Math.hypot(Math.max(0, Math.abs(at[0]) - 32), Math.max(0, Math.abs(Math.abs(at[1]) - 31) - 4));
      expect(gap, name).toBeGreaterThanOrEqual(2.25 + 0.5 - 1e-6);
      // The frame alone: off the body of 72 by 46 mm by half a head.
      const off = Math.hypot(Math.max(0, Math.abs(at[0]) - 36), Math.max(0, Math.abs(at[1]) - 23));
      expect(off, name).toBeGreaterThanOrEqual(2.25 - 1e-6);
    }
    expect(placed.fasteners.map(({ at }) => at)).not.toEqual(before.fasteners.map(({ at }) => at));
  });

  it('says what scatter comes from what as the command line does, to the last byte of the rows', async () => {
    const { page } = visit.bench;
    await settled(page);
    const model = await savedModel(page);
    await open(page, 'tolerance');
    for (const [field, text] of [
      ['young', ''],
      ['place', ''],
      ['samples', '8'],
      ['seed', '3'],
    ])
      await page.getByTestId(`setup-${field}`).fill(text);
    await run(page, 'tolerance');
    const plan = {
      vary: [
        { name: 'Thickness', path: 'body.thickness', distribution: { normal: { mean: 4.5, tolerance: 0.05, at: 3 } } },
        {
          name: 'Preload',
          path: 'sites.probes.preload',
          as: 'factor',
          distribution: { normal: { mean: 1, tolerance: 0.05, at: 3 } },
        },
      ],
      samples: 8,
      seed: 3,
      indices: true,
    };
    const text = await toleranceOnCommandLine(model, plan);
    const { summary } = JSON.parse(text.trim().split('\n').at(-1)!);
    const bow = summary.figures.find(({ criterion }: { criterion: string }) => criterion === 'bow');
    const expected = bow.indices.map((index: Record<string, number | string>) =>
      [index.cause, ...['first', 'firstError', 'total', 'totalError'].map((key) => Number(index[key]).toFixed(3))].join(
        ' ',
      ),
    );
    const rows = page.getByTestId('tornado-table').locator('tbody tr');
    const shown = (await rows.allTextContents()).length;
    expect(shown).toBe(2);
    expect(
      await rows.evaluateAll((all) =>
        all.map((row) => [...row.children].map((cell) => cell.textContent?.replace('\u2212', '-')).join(' ')),
      ),
    ).toEqual(expected);
    expect(await page.getByTestId('matters-most').textContent()).toContain(`${bow.indices[0].cause} matters most`);
    expect(await saved(page)).toBe(text);
  });

  it('keeps the rows of a sweep that is cancelled, and tells the values that just pass of one that is not', async () => {
    const { page } = visit.bench;
    await settled(page);
    await open(page, 'sweep');
    await page.getByTestId('setup-count').fill('150');
    await page.getByTestId('study-run').click();
    await expect.poll(() => page.getByTestId('study-state').textContent()).toMatch(/^([2-9]|1\d) of 150 solved/);
    await page.getByTestId('study-cancel').click();
    await page.locator('[data-testid="result-sweep"][data-state="stopped"]').waitFor();
    const kept = await page.getByTestId('sweep-table').locator('tbody tr').count();
    expect(kept).toBeGreaterThanOrEqual(2);
    expect(kept).toBeLessThan(150);
    // A header and the rows; no summary, as of a study that is not whole.
    const lines = (await saved(page)).trim().split('\n');
    expect(lines).toHaveLength(1 + kept);
    expect(JSON.parse(lines[0])).toMatchObject({ study: 'sweep', total: 150 });
    expect(JSON.parse(lines[kept]).figures.bow.value).toBeGreaterThan(0);

    await page.getByTestId('page-budget').click();
    await page.getByTestId('page-studies').click();
    expect(await page.getByTestId('sweep-table').locator('tbody tr').count()).toBe(kept);

    await page.getByTestId('setup-from').fill('7,5');
    await page.getByTestId('setup-to').fill('8.5');
    await page.getByTestId('setup-count').fill('2');
    await run(page, 'sweep');
    const words = (await page.getByTestId('crossings').textContent()) ?? '';
    const [, digits] = /Body thickness of ([\d.]+) mm or more passes/.exec(words) ?? [];
    // Taken over and solved anew, the head passes, by no more than the last digit of its thickness is worth.
    await page.getByTestId('take-crossing').click();
    await page.getByTestId('study-changed').waitFor();
    await page.getByTestId('page-bench').click();
    await settled(page);
    expect((await savedModel(page)).body.thickness).toBe(Number(digits));
    const bow = Number(await shownBow(page));
    expect(bow).toBeLessThanOrEqual(35);
    expect(bow).toBeGreaterThan(34);
  });

  it('adds up the planarity budget, and keeps it', async () => {
    const { page } = visit.bench;
    await settled(page);
    const model = await savedModel(page);
    const bow = await bowInMicrometres(model);
    await page.getByTestId('page-budget').click();
    await page.getByTestId('budget-limit').fill('200');
    // Bow and tilt of 10 add up; 3, 4 and 12 are 13 by root-sum-square and 19 added up.
    for (const [i, value] of ['3', '4,0', '12'].entries()) await page.getByTestId(`budget-value-${i + 2}`).fill(value);
    const total = await page.getByTestId('budget-total').textContent();
    expect(total).toContain(`${(bow + 10 + 13).toFixed(0)} of 200 µm, ${200 - Math.round(bow + 23)} µm left`);
    const cells = await page
      .getByTestId('budget-table')
      .locator('tbody tr')
      .evaluateAll((rows) => rows.map((row) => [...row.children].slice(3, 5).map((cell) => cell.textContent)));
    // What the bow may be beside 10 + 13; what 12 may be beside 3 and 4: sqrt((200 - bow - 10)^2 - 5^2).
    expect(cells[0]).toEqual(['177', (177 - bow).toFixed(1)]);
    expect(cells[4][0]).toBe(Math.sqrt((190 - bow) ** 2 - 25).toFixed(0));
    expect(await page.getByRole('main', { name: 'Budget' }).textContent()).toContain(
      `${(bow + 10 + 19).toFixed(0)} µm`,
    );
    await page.reload();
    await page.getByTestId('budget-total').waitFor();
    expect(await page.getByTestId('budget-value-4').inputValue()).toBe('12');
  });
});

async function open(page: Page, study: string): Promise<void> {
  await page.getByTestId('page-studies').click();
  await page.getByTestId(`study-${study}`).check({ force: true });
}

async function run(page: Page, study: string): Promise<void> {
  await page.getByTestId('study-run').click();
  await page.locator(`[data-testid="result-${study}"][data-state="done"]`).waitFor({ timeout: 120_000 });
}

/** The rows of the study that is shown, as the page saves them. */
async function saved(page: Page): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId('study-save').click()]);
  return readFile(await download.path(), 'utf8');
}

async function toleranceOnCommandLine(model: HeadModel, plan: object): Promise<string> {
  const file = join(await mkdtemp(join(tmpdir(), 'flathead-plan-')), 'plan.json');
  await writeFile(file, JSON.stringify(plan));
  const { out } = await flathead(['tolerance', '-', '--plan', file, '--json'], JSON.stringify(model));
  return out;
}

async function bowInMicrometres(model: HeadModel): Promise<number> {
  const { out } = await flathead(['check', '-', '--json'], JSON.stringify(model));
  const { verdict }: { verdict: Verdict } = JSON.parse(out);
  return verdict.criteria.find(({ criterion }) => criterion === 'bow')!.value * 1000;
}
