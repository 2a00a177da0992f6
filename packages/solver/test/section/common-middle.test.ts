import { describe, expect, it } from 'vitest';
import { requireCommonMiddle } from '../../src/section/common-middle.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import type { Section } from '../../src/section/section.ts';

const layer = (thickness: number, bottom: number) => ({ E: 320000, nu: 0.22, thickness, bottom });
const body: Section = { E: 320000, nu: 0.22, thickness: 6 };
const check = (...sections: Section[]) =>
  requireCommonMiddle(sections, (i) => (i === 0 ? 'section' : `regions.${i - 1}.section`));

describe('mid-plane of a plate', () => {
  it('is not common to a body and the same body with a frame of its own material on one face', () => {
    const ribbed: Section = { layers: [layer(4, -7), layer(6, -3)], join: 'bonded' };
    // Symmetric about its own middle, so nothing is wrong with it alone.
    expect(() => rigidityOf(ribbed, 'section')).not.toThrow();
    expect(() => check(body, ribbed)).toThrowError(
      expect.objectContaining({
        code: 'NOT_YET',
        path: 'regions.0.section',
        message: expect.stringContaining('z = -2 mm'),
      }),
    );
    expect(() => check(ribbed, body)).toThrowError(expect.objectContaining({ code: 'NOT_YET' }));
  });

  it('is common to level, sliding and given sections, and to stacks measured from any plane', () => {
    const level: Section = { layers: [layer(2, -5), layer(6, -3), layer(2, 3)], join: 'bonded' };
    const sliding: Section = { layers: [layer(4, -7), layer(6, -3)], join: 'sliding' };
    expect(() => check(body, level, sliding, { D: 1, nu: 0.3 })).not.toThrow();
    expect(() =>
      check(
        { layers: [layer(6, 0)], join: 'bonded' },
        { layers: [layer(2, 2), layer(2, 0), layer(2, 4)], join: 'bonded' },
      ),
    ).not.toThrow();
  });
});
