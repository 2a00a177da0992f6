import type { CaseResult, HeadModel, HeadResult, PartStrength } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { flathead } from '../command-line/run.ts';
import { UNDRAWN, visitEach } from './visit.ts';
import { dragFastener, hasBrowser, savedModel, settled } from './workbench.ts';

/** What `flathead check --json` says of a head: of stress the tables alone. */
interface Said {
  readonly verdict: HeadResult['verdict'];
  readonly cases: readonly (Pick<CaseResult, 'name' | 'family' | 'fasteners'> & {
    readonly strength: readonly PartStrength[] | null;
  })[];
}

/** A head on the command line: the independent route to its numbers. */
async function onCommandLine(model: HeadModel): Promise<Said> {
  const { code, out } = await flathead(['check', '-', '--json'], JSON.stringify(model));
  if (code !== 0 && code !== 1) throw new Error(`flathead check ended with ${code}: ${out}`);
  return JSON.parse(out);
}

async function fill(page: Page, path: string, text: string): Promise<void> {
  const field = page.getByTestId(`field-${path}`);
  await field.fill(text);
  await field.blur();
}

/** Cells of a row of the open tables. */
function cells(page: Page, table: string, row: string): Promise<string[]> {
  return page
    .getByTestId(`numbers-${table}`)
    .getByRole('row', { name: new RegExp(`^${row}\\b`) })
    .getByRole('cell')
    .allTextContents();
}

describe.skipIf(!hasBrowser)('results beyond the bow', () => {
  const visit = visitEach(UNDRAWN);

  it('judges a preload and a strength, shows the tension, and tells the numbers that the command line gives', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('unfold-fastener-W').click();
    await fill(page, 'fasteners.4.preload', '800');
    await fill(page, 'limits.strengthFactor', '2');
    await settled(page);
    await page.getByTestId('criterion-strength').waitFor();

    await page.getByTestId('quantity').getByText('Tension').click();
    // Strength 94 MPa of the body over the factor.
    await page.getByRole('figure', { name: 'Colours from zero to the limit of 47 MPa' }).waitFor();
    await page.getByTestId('numbers').click();

    const model = await savedModel(page);
    expect(model.fasteners.map(({ preload }) => preload ?? 0)).toEqual([0, 0, 0, 0, 800, 0]);
    const { verdict, cases } = await onCommandLine(model);
    const factor = verdict.criteria.find(({ criterion }) => criterion === 'strength')!.value;
    expect(await page.getByTestId('strength-value').textContent()).toBe(String(Number(factor.toPrecision(3))));
    const mounted = cases.find(({ name }) => name === 'mounted')!;
    const joint = mounted.fasteners[4].joint!;
    const [, , screw, clamp] = await cells(page, 'fasteners', 'W');
    expect([screw, clamp]).toEqual([joint.screwForce.low.toFixed(0), joint.clampLeft.low.toFixed(0)]);
    const [body] = mounted.strength!;
    expect((await cells(page, 'parts', 'body'))[0]).toBe(String(Number(body.stress.toPrecision(3))));
    expect(await page.getByTestId('peak-stress').textContent()).toContain(String(Number(body.stress.toPrecision(3))));
  });

  it('keeps the stress of the last full answer in sight, marked, while a fastener is held', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('numbers').click();
    await page.locator('[data-testid="numbers-parts"]:not([data-stale])').waitFor();
    await page.getByTestId('numbers').click();
    const held = await dragFastener(page, 'SW', { x: 60, y: -20 });
    await page.getByTestId('numbers').evaluate((button: HTMLElement) => button.click());
    await page.locator('[data-testid="numbers-parts"][data-stale]').waitFor();
    await held.release();
    await page.locator('[data-testid="numbers-parts"]:not([data-stale])').waitFor();
  });

  it('gathers the touchdowns over a wafer in one chip, and refuses a site that is not there beside its field', async () => {
    const { page } = visit.bench;
    await settled(page);
    await page.getByTestId('touched-1').selectOption('wafer');
    await page.getByTestId('case-row A touched').getByText('touchdowns').waitFor();
    await settled(page);
    const chips = page.getByRole('group', { name: 'Load case on the stage' }).getByRole('button');
    expect(await chips.count()).toBe(4);
    await page.getByTestId('case-row A touched').click();
    const touchdowns = page.getByTestId('touchdowns-row A touched').locator('option');
    const { cases } = await onCommandLine(await savedModel(page));
    expect(await touchdowns.count()).toBe(cases.filter(({ family }) => family === 'row A touched').length);

    await page.getByTestId('touched-1').selectOption('list');
    await fill(page, 'cases.1.touched', 'a1 B2');
    await settled(page);
    expect((await savedModel(page)).cases[1].touched).toEqual(['A1', 'B2']);
    await fill(page, 'cases.1.touched', 'A1 Z9');
    await page.getByText('No site is called "Z9"; the head has A1 to B5.').waitFor();
    expect((await savedModel(page)).cases[1].touched).toEqual(['A1', 'B2']);
  });

  it('takes every limit and says which it can not judge', async () => {
    const { page } = visit.bench;
    await settled(page);
    await fill(page, 'limits.failureProbability', '1e-9');
    await page.getByText('Not judged: what it needs is not known').waitFor();
    await page.getByTestId('field-body.material').selectOption('alumina-96');
    await settled(page);
    const model = await savedModel(page);
    expect(model.limits.failureProbability).toBe(1e-9);
    const { verdict } = await onCommandLine(model);
    const { value } = verdict.criteria.find(({ criterion }) => criterion === 'failureProbability')!;
    const shown = await page.getByTestId('failureProbability-value').textContent();
    expect(shown?.replace('\u2212', '-')).toBe(value.toExponential(1));
  });
});
