import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { COUPLED_DOFS, coupledStiffness, neutralStrain } from '../../src/element/coupled-triangle.ts';
import { membraneStrain } from '../../src/element/membrane-triangle.ts';
import { bondedLayers } from '../../src/section/bonded-layers.ts';

const x = Float64Array.of(0.3, 4.1, 1.2);
const y = Float64Array.of(-0.4, 0.7, 3.9);
const centroidOf = (l: readonly number[]) => [0, 1].map((c) => l.reduce((s, w, k) => s + w * [x, y][c][k], 0));
const L = [0.2, 0.5, 0.3] as const;
const SIX = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0, 0.5, 0.5],
  [0.5, 0, 0.5],
  [0.5, 0.5, 0],
];
const layers = (shift: number) => [
  { E: 3.2e5, nu: 0.22, thickness: 2, bottom: shift },
  { E: 2e5, nu: 0.3, thickness: 1, bottom: shift + 2 },
];

function stiffness(shift: number, shear: boolean): Matrix {
  const { rigidity, membrane } = bondedLayers(layers(shift), 'section');
  const Ke = new Float64Array(COUPLED_DOFS ** 2);
  coupledStiffness(x, y, rigidity.bending, shear ? rigidity.shear : null, membrane.stretching, membrane.offset, Ke);
  return Matrix.from1DArray(COUPLED_DOFS, COUPLED_DOFS, Ke);
}

describe('membrane triangle', () => {
  it('strains exactly under any quadratic displacement', () => {
    const u = ([a, b]: number[]) => 1 + 2 * a - b + 0.3 * a * a - 0.7 * a * b + 0.2 * b * b;
    const v = ([a, b]: number[]) => -1 + a + 3 * b - 0.4 * a * a + 0.1 * a * b + 0.6 * b * b;
    const B = new Float64Array(36);
    membraneStrain(x, y, ...L, B);
    const nodal = SIX.flatMap((l) => [u(centroidOf(l)), v(centroidOf(l))]);
    const strain = [0, 1, 2].map((r) => nodal.reduce((sum, value, p) => sum + B[12 * r + p] * value, 0));
    const [a, b] = centroidOf([...L]);
    expect(strain[0]).toBeCloseTo(2 + 0.6 * a - 0.7 * b, 12);
    expect(strain[1]).toBeCloseTo(3 + 0.1 * a + 1.2 * b, 12);
    expect(strain[2]).toBeCloseTo(-1 - 0.7 * a + 0.4 * b + 1 - 0.8 * a + 0.1 * b, 12);
  });
});

describe('triangle that bends and stretches', () => {
  it.each([false, true])('has six rigid motions and three missing dofs a side and corner, shear %s', (shear) => {
    const { realEigenvalues } = new EigenvalueDecomposition(stiffness(0.7, shear), { assumeSymmetric: true });
    const largest = Math.max(...realEigenvalues);
    expect(realEigenvalues.filter((value) => value < -1e-11 * largest)).toEqual([]);
    // 27 dofs: 6 that in-plane rows lack, 6 rigid motions.
    expect(realEigenvalues.filter((value) => Math.abs(value) < 1e-11 * largest)).toHaveLength(12);
  });

  it.each([false, true])('does not depend on the reference plane, shear %s', (shear) => {
    // Material at height z moves by u0 + z thetaY, v0 - z thetaX: from a plane lower by h, u0' = u0 - h thetaY.
    // The rotations in the middle of the sides follow from the plate's own field, so transform by energy:
    // minimal energy over the in-plane dofs for given plate dofs is the same whatever the plane.
    const condensed = (K: Matrix): Matrix => {
      const plate = Array.from({ length: 9 }, (_, p) => p);
      const plane = Array.from({ length: 18 }, (_, p) => 9 + p).filter((p) => p % 3 !== 0);
      const Kpp = K.selection(plane, plane);
      const Kpb = K.selection(plane, plate);
      const { diagonalMatrix: d, eigenvectorMatrix: V } = new EigenvalueDecomposition(Kpp, { assumeSymmetric: true });
      const values = d.diagonal();
      const largest = Math.max(...values);
      const inverse = Matrix.diag(values.map((value) => (value > 1e-10 * largest ? 1 / value : 0)));
      return Matrix.sub(K.selection(plate, plate), Kpb.transpose().mmul(V).mmul(inverse).mmul(V.transpose()).mmul(Kpb));
    };
    const here = condensed(stiffness(0, shear));
    const there = condensed(stiffness(-7.3, shear));
    expect(Matrix.sub(here, there).norm() / here.norm()).toBeLessThan(1e-10);
  });

  it('strains its neutral surface by offset times curvature where the plane does not move', () => {
    const { rigidity, membrane } = bondedLayers(layers(1), 'section');
    const E = new Float64Array(3 * COUPLED_DOFS);
    neutralStrain(x, y, rigidity.bending, null, membrane.offset, ...L, E);
    // w = -(k/2) x^2: kxx = k.
    const k = 2e-3;
    const plate = [0, 1, 2].flatMap((c) => [(-k * x[c] * x[c]) / 2, 0, k * x[c]]);
    const strain = [0, 1, 2].map((r) => plate.reduce((sum, value, p) => sum + E[COUPLED_DOFS * r + p] * value, 0));
    expect(strain[0]).toBeCloseTo(k * membrane.offset[0], 12);
    expect(strain[1]).toBeCloseTo(k * membrane.offset[3], 12);
    expect(strain[2]).toBeCloseTo(0, 12);
  });
});
