import { describe, expect, it } from 'vitest';
import { UNDRAWN, visitEach } from './visit.ts';
import { hasBrowser } from './workbench.ts';

describe.skipIf(!hasBrowser)('guided start', () => {
  const visit = visitEach(UNDRAWN);

  it('has every question in sight at 1280 x 720, and says beside button and field why there is no head', async () => {
    const { page } = visit.bench;
    await page.setViewportSize({ width: 1280, height: 720 });
    await page.getByTestId('new-head').click();
    await page.getByTestId('start-make').waitFor();
    const dialog = page.getByTestId('start');
    /** Lower edge of everything that is asked, and where what is in sight ends, px. */
    const [asked, end] = await dialog.evaluate((element) => {
      const edges = [...element.querySelectorAll('input, select, fieldset, button')].map(
        (one) => one.getBoundingClientRect().bottom,
      );
      return [Math.max(...edges), Math.min(innerHeight, element.getBoundingClientRect().bottom)];
    });
    expect(asked).toBeLessThanOrEqual(end);
    expect(await dialog.getByTestId('start-bow').isVisible()).toBe(true);
    const [far, side] = await dialog.evaluate((element) => [
      Math.max(...[...element.querySelectorAll('input, select')].map((one) => one.getBoundingClientRect().right)),
      element.getBoundingClientRect().right,
    ]);
    expect(far).toBeLessThan(side);
    const hidden = await dialog.evaluate((element) =>
      [...element.querySelectorAll('*')].some(
        (one) => one.scrollHeight > one.clientHeight + 4 && one.clientHeight > 200,
      ),
    );
    expect(hidden).toBe(false);

    // Selects begin where the numbers under them do.
    const lefts = (names: readonly string[]) =>
      Promise.all(names.map(async (name) => (await dialog.getByLabel(name, { exact: true }).boundingBox())!.x));
    const [body, frame, screw] = await lefts(['Body material', 'Frame material', 'Screw']);
    expect([frame, screw]).toEqual([body, body]);
    const { x: thick } = (await dialog.getByTestId('start-body.thickness').locator('..').boundingBox())!;
    expect(Math.abs(body - thick)).toBeLessThan(1);

    await page.setViewportSize({ width: 1024, height: 768 });
    const sizes = await dialog
      .getByRole('img', { name: /^The head from above/ })
      .locator('text')
      .evaluateAll((all) => all.map((one) => ({ said: one.textContent, ...one.getBoundingClientRect().toJSON() })));
    // Body and frame, along and across: 3 columns of 6 mm dies, one skipped, and what the draft puts around them.
    expect(sizes.map(({ said }) => said)).toEqual(['48', '36', '63', '51']);
    for (const [i, a] of sizes.entries())
      for (const b of sizes.slice(i + 1))
        expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);

    const refusal = page.getByTestId('start-refusal');
    const make = page.getByTestId('start-make');
    expect(await refusal.isVisible()).toBe(false);
    for (const [id, text, said] of [
      ['start-bow', 'little', /Bow, at most: "little" is no number/],
      ['start-probes.count', '2000', /2000\sprobes\sat\s0\.4\smm\sneed\s18\smm\salong\sx/],
      ['start-name', '', /A head needs a name/],
    ] as const) {
      const field = page.getByTestId(id);
      const before = await field.inputValue();
      await field.fill(text);
      expect(await refusal.textContent()).toMatch(said);
      expect(await make.getAttribute('aria-disabled')).toBe('true');
      expect(await make.getAttribute('aria-describedby')).toBe(await refusal.getAttribute('id'));
      expect(await dialog.getByRole('alert').count()).toBe(1);
      // Pressed all the same, it leads to the field that is meant.
      await make.click({ force: true });
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true');
      await field.fill(before);
      expect(await refusal.isVisible()).toBe(false);
    }
    expect(await make.getAttribute('aria-disabled')).toBe('false');
  });
});
