import { describe, expect, it } from 'vitest';
import { haveCommonNeutral } from '../../src/section/common-neutral.ts';
import type { Section } from '../../src/section/section.ts';

const layer = (thickness: number, bottom: number) => ({ E: 320000, nu: 0.22, thickness, bottom });
const body: Section = { E: 320000, nu: 0.22, thickness: 6 };
const check = (...sections: Section[]) =>
  haveCommonNeutral(sections, (i) => (i === 0 ? 'section' : `regions.${i - 1}.section`));

describe('neutral surfaces of a plate', () => {
  it('differ between a body and the same body with a frame of its own material on one face', () => {
    const ribbed: Section = { layers: [layer(4, -7), layer(6, -3)], join: 'bonded' };
    expect(check(ribbed)).toBe(true);
    expect(check(body, ribbed)).toBe(false);
    expect(check(ribbed, body)).toBe(false);
  });

  it('are two in one section whose layers differ in Poisson ratio', () => {
    expect(check({ layers: [layer(4, -7), { ...layer(6, -3), nu: 0.3 }], join: 'bonded' })).toBe(false);
  });

  it('are one up to a billionth of the thickness, in any unit of length', () => {
    for (const unit of [1e-2, 1, 1e2])
      for (const [off, one] of [
        [0.5e-9, true],
        [2e-9, false],
      ] as const) {
        const stack: Section = { layers: [layer(6 * unit, (off * 6 - 3) * unit)], join: 'bonded' };
        expect(check({ ...body, thickness: 6 * unit }, stack), `unit ${unit}, off ${off}`).toBe(one);
      }
  });

  it('are common to level, sliding and given sections, and to stacks measured from any plane', () => {
    const level: Section = { layers: [layer(2, -5), layer(6, -3), layer(2, 3)], join: 'bonded' };
    const sliding: Section = { layers: [layer(4, -7), layer(6, -3)], join: 'sliding' };
    expect(check(body, level, sliding, { D: 1, nu: 0.3 })).toBe(true);
    expect(
      check(
        { layers: [layer(6, 0)], join: 'bonded' },
        { layers: [layer(2, 2), layer(2, 0), layer(2, 4)], join: 'bonded' },
      ),
    ).toBe(true);
  });
});
