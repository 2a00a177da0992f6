import { type HeadModel, solveHead } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { visitEach } from './visit.ts';
import {
  bowOnCommandLine,
  colouredShare,
  dragFastener,
  dragHandle,
  drawn,
  hasBrowser,
  savedModel,
  settled,
  shownBow,
} from './workbench.ts';

async function undone(page: Page, before: HeadModel): Promise<void> {
  await page.getByTestId('undo').click();
  await settled(page);
  expect(await savedModel(page)).toEqual(before);
}

/**
 * Deviation at a point, um: the saved head solved here, the triangle found by trying all, and its corner values weighed
 * by areas.
 */
function deviationOf(model: HeadModel): (x: number, y: number) => number {
  const { mesh, cases } = solveHead(model).result;
  const worst = cases.reduce((a, b) => (Math.abs(b.bow.value) > Math.abs(a.bow.value) ? b : a));
  return (x, y) => {
    for (let t = 0; t < mesh.triangles.length; t += 3) {
      const [a, b, c] = mesh.triangles.subarray(t, t + 3);
      const twice = (p: number[], q: number[]) => p[0] * q[1] - p[1] * q[0];
      const [pa, pb, pc] = [a, b, c].map((v) => [mesh.x[v] - x, mesh.y[v] - y]);
      const areas = [twice(pb, pc), twice(pc, pa), twice(pa, pb)];
      const whole = areas[0] + areas[1] + areas[2];
      if (areas.every((area) => area >= -1e-9 * whole))
        return (1000 * [a, b, c].reduce((sum, v, k) => sum + areas[k] * worst.deviation[v], 0)) / whole;
    }
    throw new Error(`${x}, ${y} is off the head.`);
  };
}

/** Rows of the table of the section: distance along the line, mm, and what is said there. */
async function sectionTable(page: Page): Promise<readonly (readonly [number, string])[]> {
  await page.getByText('As a table').click();
  const rows = await page.getByTestId('section-table').getByRole('row').all();
  const texts = await Promise.all(
    rows.map(async (row) => [
      await row.getByRole('rowheader').allTextContents(),
      await row.getByRole('cell').allTextContents(),
    ]),
  );
  await page.getByText('As a table').click();
  return texts.flatMap(([[head], [cell]]) =>
    head?.startsWith('at ') ? [[Number.parseFloat(head.slice(3)), cell] as const] : [],
  );
}

/** Digits as the page writes a deflection. */
function digits(um: number): string {
  const size = Math.abs(um);
  return `${um < 0 ? '\u2212' : '+'}${size.toFixed(size >= 100 ? 0 : size >= 10 ? 1 : 2)}`;
}

describe.skipIf(!hasBrowser)('stage', () => {
  const visit = visitEach();

  it('drags a rib that was added there, to the bow that the command line gives, and undoes it in one step', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await page.getByTestId('add').click();
    await page.getByTestId('add-on-stage-rib').click();
    await settled(page);
    const before = await savedModel(page);
    const bow = await shownBow(page);
    const [rib] = before.frame!.ribs!;
    if (!('from' in rib)) throw new Error('It is a rib of its own.');

    // To the next gap: on the way the rib lies over sites, which is refused.
    await page.getByText('From above', { exact: true }).click();
    await page.waitForTimeout(1500);
    const column = async (site: string) => (await page.getByTestId(`site-${site}`).boundingBox())!.x;
    const drag = await dragHandle(page, 'grip-rib-0', { x: (await column('A4')) - (await column('A3')), y: 0 });
    await expect.poll(() => page.getByTestId('grip-rib-0').textContent()).toMatch(/mm to site|over site/);
    await drag.release();
    await settled(page);
    const model = await savedModel(page);
    const [moved] = model.frame!.ribs!;
    if (!('from' in moved)) throw new Error('It is still a rib of its own.');
    const by = moved.from.map((value, axis) => value - rib.from[axis]);
    expect(Math.abs(by[0] - 9.2)).toBeLessThan(0.6);
    // It keeps its length and slope, and its middle the grid of 0.1 mm.
    for (const axis of [0, 1] as const) expect(moved.to[axis] - rib.to[axis]).toBeCloseTo(by[axis], 9);
    const tenths = 5 * (moved.from[0] + moved.to[0]);
    expect(tenths).toBeCloseTo(Math.round(tenths), 6);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    // From one gap beside the middle to the other: the mirror image of the same head.
    expect(await shownBow(page)).toBe(bow);
    await undone(page, before);
  });

  // Retried as all that waits for a picture drawn in software: it has to hold once.
  it('drags a keep-out and a corner of it, linked to the one opposite, each undone in one step', {
    retry: 2,
  }, async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await page.getByText('From above', { exact: true }).click();
    const before = await savedModel(page);
    await page.getByTestId('mirror').selectOption('y');

    const drag = await dragHandle(page, 'grip-keepOut-0', { x: 30, y: 40 });
    await expect.poll(() => page.getByTestId('grip-keepOut-0').textContent()).toMatch(/mm to fastener N[WE]/);
    await drag.release();
    await settled(page);
    const [far, near] = (await savedModel(page)).keepOuts!.map(({ shape }) => shape);
    if (!('rectangle' in far && 'rectangle' in near)) throw new Error('They are rectangles.');
    expect(far.rectangle).toEqual([64, 8]);
    expect(far.centre![0]).toBeGreaterThan(1);
    expect(far.centre![1]).toBeLessThan(30);
    expect(near).toEqual({ ...far, centre: [far.centre![0], -far.centre![1]] });
    await undone(page, before);

    await page.getByTestId('grip-keepOut-0').focus();
    const corner = await dragHandle(page, 'grip-keepOut-0-corner-2', { x: -40, y: -10 });
    await corner.release();
    await settled(page);
    const [resized, other] = (await savedModel(page)).keepOuts!.map(({ shape }) => shape);
    if (!('rectangle' in resized && 'rectangle' in other)) throw new Error('They are rectangles.');
    expect(resized.rectangle[0]).toBeLessThan(63);
    expect(resized.rectangle[1]).toBeGreaterThan(8);
    // The lower left corner stays.
    expect(resized.centre![0] - resized.rectangle[0] / 2).toBeCloseTo(-32, 3);
    expect(resized.centre![1] - resized.rectangle[1] / 2).toBeCloseTo(27, 3);
    expect(other.rectangle).toEqual(resized.rectangle);
    await undone(page, before);
  });

  it('drags the site pitch, which replaces the skipped dies and says so', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const before = await savedModel(page);
    const drag = await dragHandle(page, 'grip-pitch', { x: -14, y: 4 });
    await drag.release();
    await page.getByText('Sites are spaced by pitch now').waitFor();
    await settled(page);
    const model = await savedModel(page);
    expect(model.sites.die).toBeUndefined();
    expect(model.sites.skip).toBeUndefined();
    expect(model.sites.pitch![0]).toBeLessThan(9.2);
    expect(model.sites.pitch![0]).toBeGreaterThanOrEqual(5.6);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    await undone(page, before);
  });

  it('keeps the last good answer while sites are dragged off the body, says so there, and comes back', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const before = await savedModel(page);
    const bow = await shownBow(page);
    const drag = await dragHandle(page, 'grip-pitch', { x: 300, y: 0 });
    await page.getByTestId('drag-refused').waitFor();
    await page.locator('[data-testid="verdict"][data-stale="refused"]').waitFor();
    // That of the last place on the way at which the sites were on the body.
    expect(Number(await shownBow(page))).toBeGreaterThan(1);
    await page.keyboard.press('Escape');
    await drag.release();
    await settled(page);
    expect(await shownBow(page)).toBe(bow);
    expect(await savedModel(page)).toEqual(before);
    expect(await page.getByTestId('undo').isDisabled()).toBe(true);
  });

  it('puts a fastener where it is typed, with commas, and undoes that', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const before = await savedModel(page);
    await page.getByTestId('fastener-NE').focus();
    await page.keyboard.type('42,5; 28,25');
    await page.keyboard.press('Enter');
    await settled(page);
    const model = await savedModel(page);
    expect(model.fasteners.find(({ name }) => name === 'NE')!.at).toEqual([42.5, 28.25]);
    expect(await shownBow(page)).toBe(await bowOnCommandLine(model));
    await undone(page, before);

    // Along the grid of a millimetre with the arrow keys, one step of undo for a run of them.
    await page.getByTestId('snap').selectOption('1');
    await page.getByTestId('fastener-E').focus();
    await page.keyboard.press('ArrowLeft');
    await settled(page);
    expect((await savedModel(page)).fasteners.find(({ name }) => name === 'E')!.at).toEqual([49, 0]);
    await undone(page, before);
  });

  it('adds, copies and removes fasteners and keep-outs', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const before = await savedModel(page);
    await page.getByTestId('fastener-W').focus();
    await page.getByTestId('card-copy').click();
    await settled(page);
    expect((await savedModel(page)).fasteners.map(({ name }) => name)).toEqual([
      'NW',
      'NE',
      'SW',
      'SE',
      'W',
      'E',
      'F1',
    ]);
    await page.getByTestId('fastener-F1').focus();
    await page.keyboard.press('Delete');
    await settled(page);
    expect(await savedModel(page)).toEqual(before);
    await page.getByTestId('add').click();
    await page.getByTestId('add-on-stage-keepOut').click();
    await page.getByTestId('card-place').fill('38,5 -20');
    await page.getByTestId('card-place').press('Enter');
    await page.getByTestId('card-clearance').fill('0,75');
    await page.getByTestId('card-clearance').press('Enter');
    await settled(page);
    expect((await savedModel(page)).keepOuts![2]).toEqual({
      name: 'keep-out 1',
      shape: { rectangle: [10, 6], centre: [38.5, -20] },
      clearance: 0.75,
    });
    await page.getByTestId('grip-keepOut-2').focus();
    await page.getByTestId('card-remove').click();
    await settled(page);
    expect(await savedModel(page)).toEqual(before);
  });

  it('charts the deviation along a line as the solver gives it there, also along one that was dragged', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await page.getByTestId('section').click();
    const model = await savedModel(page);
    const at = deviationOf(model);
    // The row of the worst site, A3, from edge to edge of the frame.
    const rows = (await sectionTable(page)).filter(([s]) => s > 0 && s < 112);
    expect(rows.length).toBeGreaterThan(8);
    for (const [s, text] of rows) expect(text).toBe(digits(at(s - 56, 5.2)));

    await page.getByTestId('section-field-from').fill('-30,5; -12,25');
    await page.getByTestId('section-field-from').press('Enter');
    const drag = await dragHandle(page, 'section-to', { x: -260, y: -10 });
    await drag.release();
    const read = async (end: string) =>
      (await page.getByTestId(`section-field-${end}`).inputValue()).split(', ').map(Number);
    const [from, to] = [await read('from'), await read('to')];
    expect(from).toEqual([-30.5, -12.25]);
    expect(to[0]).toBeLessThan(50);
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    for (const [s, text] of (await sectionTable(page)).filter(([s]) => s < length)) {
      const share = s / length;
      expect(text).toBe(digits(at(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]))));
    }
    // Read with the keyboard: 0.5 mm from the start.
    await page.getByTestId('section-chart').focus();
    await page.keyboard.press('ArrowRight');
    const value = at(from[0] + (0.5 / length) * (to[0] - from[0]), from[1] + (0.5 / length) * (to[1] - from[1]));
    expect(await page.getByTestId('section-readout').textContent()).toBe(`at 0.5 mm: ${digits(value)} µm`);
    expect(await savedModel(page)).toEqual(model);
  });

  it('draws the head with its field, forces that pull at each fastener, and the contact left at each site', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    await expect.poll(() => colouredShare(page)).toBeGreaterThan(0.05);
    await page.getByTestId('arrows').click();
    expect(await page.locator('[data-testid^="arrow-"][data-sense="pull"]').count()).toBe(6);
    await page.getByTestId('quantity').getByText('Contact').click();
    const model = await savedModel(page);
    const [mounted] = solveHead(model).result.cases;
    const left = mounted.sites[2].contact!.board!.minimum;
    expect(await page.getByTestId('contact-A3').textContent()).toContain(left.toFixed(left >= 0.1 ? 2 : 4));
  });

  it('swings the deflection when asked, and shows the head at rest where motion is to be reduced', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const place = async () => (await page.getByTestId('site-A3').boundingBox())!.y;
    let full = await place();
    await expect
      .poll(async () => {
        const last = full;
        await page.waitForTimeout(800);
        full = await place();
        return full - last;
      })
      .toBe(0);
    await page.getByTestId('play').click();
    const seen: number[] = [];
    const sees = async (there: (y: number) => boolean): Promise<boolean> => {
      const y = await place();
      seen.push(y);
      return there(y);
    };
    // Down to rest and up to full again: on the page, y grows downwards.
    await expect.poll(() => sees((y) => y - full > 4), { interval: 20 }).toBe(true);
    await expect.poll(() => sees((y) => y - full < 2), { interval: 20 }).toBe(true);
    expect(new Set(seen).size).toBeGreaterThan(2);
    await page.getByTestId('play').click();
    await expect.poll(async () => Math.abs((await place()) - full)).toBeLessThan(0.6);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.getByTestId('play').click();
    await expect.poll(async () => (await place()) - full).toBeGreaterThan(3);
    const rest = await place();
    await page.waitForTimeout(800);
    expect(await place()).toBe(rest);
  });

  it('cancels a drag with Escape', async () => {
    const { page } = visit.bench;
    await settled(page);
    await drawn(page);
    const before = await savedModel(page);
    const drag = await dragFastener(page, 'NE', { x: -60, y: 30 });
    await page.keyboard.press('Escape');
    await page.mouse.move(drag.x - 120, drag.y);
    await drag.release();
    await settled(page);
    expect(await savedModel(page)).toEqual(before);
  });
});
