import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { drilledCompliance } from '../../src/section/drilled.ts';
import type { HoleArray } from '../../src/section/hole-array.ts';
import { membraneOf } from '../../src/section/membrane-of.ts';

const plate = { E: 3e5, nu: 0.22, thickness: 5 };
const holes: HoleArray = { pitch: 1, diameter: 0.5, pattern: 'square' };

/** Stiffness in the plane of a layer with holes of a diameter, per thickness: the inverse of its compliance. */
function perThickness(diameter: number): Matrix {
  const { S11, S12, S66 } = drilledCompliance({ ...holes, diameter }, plate.nu, 'holes');
  return inverse(new Matrix([[S11, S12, 0], [S12, S11, 0], [0, 0, S66]])).mul(plate.E); // biome-ignore format: a matrix
}

const upper = (A: Matrix) => [A.get(0, 0), A.get(0, 1), A.get(0, 2), A.get(1, 1), A.get(1, 2), A.get(2, 2)];
const expectAlike = (found: Float64Array, expected: Matrix) =>
  upper(expected).forEach((value, k) => {
    expect(found[k] / expected.get(0, 0)).toBeCloseTo(value / expected.get(0, 0), 12);
  });

describe('stretching of a section', () => {
  it('is E t/(1 - nu^2) of a solid plate, about its middle', () => {
    const { stretching, offset } = membraneOf(plate, 'section');
    const q = (3e5 * 5) / (1 - 0.22 ** 2);
    expectAlike(stretching, new Matrix([[q, 0.22 * q, 0], [0.22 * q, q, 0], [0, 0, (0.78 / 2) * q]])); // biome-ignore format: a matrix
    expect([...offset]).toEqual(new Array(9).fill(0));
  });

  it('is the stiffness in the plane of each layer of holes times its thickness', () => {
    expectAlike(membraneOf({ ...plate, holes }, 'section').stretching, perThickness(0.5).mul(5));
    for (const side of ['board', 'device'] as const) {
      const counterbore = { diameter: 0.7, depth: 1.5, side };
      const both = Matrix.add(perThickness(0.7).mul(1.5), perThickness(0.5).mul(3.5));
      expectAlike(membraneOf({ ...plate, holes: { ...holes, counterbore } }, 'section').stretching, both);
    }
  });

  it('is not known of layers that slide and of given rigidities', () => {
    const layer = { E: 1e5, nu: 0.3, thickness: 1, bottom: 0 };
    for (const section of [
      { layers: [layer], join: 'sliding' as const },
      { D: 1e5, nu: 0.3 },
    ])
      expect(() => membraneOf(section, 'regions.1.section')).toThrowError(
        expect.objectContaining({ code: 'NOT_YET', path: 'regions.1.section' }),
      );
  });
});
