import { describe, expect, it } from 'vitest';
import type { PlateSupport } from '../../src/plate/plate-problem.ts';
import { massOver } from '../../src/structure/flexibility.ts';
import { supportOf } from '../../src/structure/support.ts';
import { onThree, solved } from './solved.ts';

const square = { rectangle: [8, 6] as [number, number], centre: [5, 12] as [number, number] };
const loads = [{ at: [-10, 2] as [number, number], force: 50 }];
const third = (support: PlateSupport) =>
  solved({ ...onThree, loads, supports: [...onThree.supports!.slice(0, 2), support] });
/** Mean deflection over a shape, mm, by an integral of its own. */
const mean = ({ structure, cases }: ReturnType<typeof third>, shape: typeof square | { circle: number }): number => {
  const { area, mean: integral } = massOver(structure, structure.ring(shape, ''), '');
  return integral(cases[0].u) / area;
};

describe('a support', () => {
  it('holds the mean of w over its area, over its bearing, or at its point', () => {
    const disc = { circle: 8, centre: square.centre };
    const [over, bearing, point] = [
      third({ at: square.centre, over: square }),
      third({ at: square.centre, diameter: 8 }),
      third({ at: square.centre }),
    ];
    expect(mean(over, square)).toBeCloseTo(0, 12);
    const largest = Math.abs(mean(point, disc));
    expect(largest).toBeGreaterThan(1e-6);
    // The bearing is a polygon of the same area.
    expect(Math.abs(mean(bearing, disc))).toBeLessThan(0.02 * largest);
    expect(Math.abs(mean(over, disc))).toBeGreaterThan(0.05 * largest);
  });

  it('acts both ways, rigidly, at no height and by its number, unless told otherwise', () => {
    const { structure } = third({ at: square.centre });
    expect(supportOf(structure, { at: [0, 0] }, 2)).toMatchObject({
      name: 'S3',
      stiffness: null,
      acts: 'both',
      height: 0,
    });
    const told = { name: 'F1', stiffness: 5e4, acts: 'pull', height: 0.2 } as const;
    expect(supportOf(structure, { at: [0, 0], ...told }, 2)).toMatchObject(told);
  });

  it('is refused off the plate, with its path', () => {
    const { structure } = third({ at: square.centre });
    const away: [number, number] = [90, 0];
    const refused = (support: PlateSupport, path: string) =>
      expect(() => supportOf(structure, support, 1)).toThrow(expect.objectContaining({ code: 'OUTSIDE', path }));
    refused({ at: away }, 'supports.1.at');
    refused({ at: away, diameter: 3 }, 'supports.1.at');
    refused({ at: away, over: { circle: 3, centre: away } }, 'supports.1.over');
  });

  it('moves by its force over its stiffness from its height, and a determinate plate follows without stress', () => {
    const lifted = { at: square.centre, height: 0.3, stiffness: 1000 };
    const { cases } = third(lifted);
    const [{ seats, reactions }] = cases;
    expect(seats[2]).toBeCloseTo(0.3 - reactions[2] / 1000, 12);
    expect(seats[0]).toBe(0);
    const level = third({ at: square.centre }).cases[0].reactions;
    reactions.forEach((reaction, i) => {
      expect(reaction).toBeCloseTo(level[i], 8);
    });
  });
});
