import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { assembleCoupled } from '../../src/assembly/coupled-stiffness.ts';
import { foundationOver } from '../../src/assembly/foundation.ts';
import { coupledStiffness } from '../../src/element/coupled-triangle.ts';
import { addFoundationStiffness } from '../../src/element/foundation.ts';
import { locator } from '../../src/mesh/locate.ts';
import { loose, membranes, mesh, plane, rigidities } from './coupled-samples.ts';
import { denseOf } from './dense-solve.ts';

const n = mesh.x.length;
const nRows = plane.pattern.n;
const size = 3 * nRows;

/** The whole K by `K[dofs, dofs] += Ke`, dense; sides are found by the nodes at their ends. */
function naive(theory: 'thin' | 'shear', modulus: number): Matrix {
  const side = new Map<string, number>();
  for (let e = 0; e < plane.ends.length / 2; e++)
    side.set([...plane.ends.subarray(2 * e, 2 * e + 2)].sort((a, b) => a - b).join(), 2 * n + e);
  const K = Matrix.zeros(size, size);
  for (let t = 0; t < mesh.region.length; t++) {
    const nodes = [...mesh.triangles.subarray(3 * t, 3 * t + 3)];
    const x = Float64Array.from(nodes, (node) => mesh.x[node]);
    const y = Float64Array.from(nodes, (node) => mesh.y[node]);
    const { bending, shear } = rigidities[mesh.region[t]];
    const { stretching, offset } = membranes[mesh.region[t]];
    const Ke = new Float64Array(27 * 27);
    coupledStiffness(x, y, bending, theory === 'thin' ? null : shear, stretching, offset, Ke);
    const bed = new Float64Array(81);
    addFoundationStiffness(x, y, modulus, Float64Array.from(nodes.flatMap((_, c) => [x[c], y[c]])), 3, bed);
    for (let p = 0; p < 9; p++) for (let q = 0; q < 9; q++) Ke[27 * p + q] += bed[9 * p + q];
    // Each side comes with the corner opposite to it.
    const sides = nodes.map(
      (_, k) => side.get([nodes[(k + 1) % 3], nodes[(k + 2) % 3]].sort((a, b) => a - b).join()) ?? Number.NaN,
    );
    const dofs = [...nodes, ...nodes.map((node) => n + node), ...sides].flatMap((row) => [
      3 * row,
      3 * row + 1,
      3 * row + 2,
    ]);
    dofs.forEach((p, a) => {
      dofs.forEach((q, b) => {
        K.set(p, q, K.get(p, q) + Ke[27 * a + b]);
      });
    });
  }
  return K;
}

/** Gives the dofs that in-plane rows lack the diagonal of their neighbour, so that the matrix can be factorised. */
function withFillers(K: Matrix): Matrix {
  for (let row = n; row < nRows; row++) K.set(3 * row, 3 * row, K.get(3 * row + 1, 3 * row + 1));
  return K;
}

const difference = (A: Matrix, B: Matrix): number => Matrix.sub(A, B).abs().max() / Matrix.abs(B).max();

describe('stiffness of a plate that stretches where it bends', () => {
  it.each(['thin', 'shear'] as const)('is the sum of its elements, %s', (theory) => {
    const K = assembleCoupled(mesh, plane, rigidities, membranes, theory, [], loose(nRows));
    expect(difference(denseOf(K), withFillers(naive(theory, 0)))).toBeLessThan(1e-15);
  });

  it('takes a foundation under the plate', () => {
    const bed = [foundationOver(mesh, locator(mesh), 'all', 8e4, '')];
    const K = assembleCoupled(mesh, plane, rigidities, membranes, 'thin', bed, loose(nRows));
    expect(difference(denseOf(K), withFillers(naive('thin', 8e4)))).toBeLessThan(1e-14);
  });

  it('is turned to local axes, with held dofs alone on their diagonals', () => {
    const holds = loose(nRows);
    const R = Matrix.eye(size, size);
    // A node's plate row, its in-plane row, and rows of sides.
    [6, n + 7, n + 12, 2 * n + 3, 2 * n + 20].forEach((row, k) => {
      const [c, s] = [Math.cos(0.3 + k), Math.sin(0.3 + k)];
      holds.cos[row] = c;
      holds.sin[row] = s;
      holds.mask[row] = [2, 4, 6, 2, 4][k];
      R.setSubMatrix([[c, -s], [s, c]], 3 * row + 1, 3 * row + 1); // biome-ignore format: a rotation
    });
    const expected = R.transpose().mmul(naive('shear', 0)).mmul(R);
    for (let p = 0; p < size; p++)
      for (let q = 0; q < size; q++)
        if (p !== q && [p, q].some((dof) => holds.mask[Math.floor(dof / 3)] & (1 << (dof % 3)))) expected.set(p, q, 0);
    const K = assembleCoupled(mesh, plane, rigidities, membranes, 'shear', [], holds);
    expect(difference(denseOf(K), withFillers(expected))).toBeLessThan(1e-15);
  });
});
