import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { foundationOver } from '../../src/assembly/foundation.ts';
import { holdsOf } from '../../src/assembly/holds.ts';
import { blockPattern } from '../../src/assembly/pattern.ts';
import { assembleStiffness } from '../../src/assembly/stiffness.ts';
import { addFoundationStiffness } from '../../src/element/foundation.ts';
import { plateStiffness } from '../../src/element/plate-triangle.ts';
import { locator } from '../../src/mesh/locate.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { denseOf } from './dense-solve.ts';
import { irregularMesh } from './sample-meshes.ts';

const rigidities = [
  rigidityOf({ E: 300000, nu: 0.22, thickness: 2 }, 'section'),
  rigidityOf({ Dx: 4e5, Dy: 1e5, D1: 3e4, Dxy: 6e4 }, 'regions.0.section'),
];
const mesh: Mesh = { ...irregularMesh(5), region: Uint32Array.from({ length: 50 }, (_, t) => (t % 7 < 3 ? 1 : 0)) };
const free = holdsOf(mesh, []);

/** The whole K by `K[dofs, dofs] += Ke`, dense. */
function naive(theory: 'thin' | 'shear', modulus: number): Matrix {
  const K = Matrix.zeros(3 * mesh.x.length, 3 * mesh.x.length);
  for (let t = 0; t < mesh.region.length; t++) {
    const nodes = [...mesh.triangles.subarray(3 * t, 3 * t + 3)];
    const x = Float64Array.from(nodes, (n) => mesh.x[n]);
    const y = Float64Array.from(nodes, (n) => mesh.y[n]);
    const { bending, shear } = rigidities[mesh.region[t]];
    const Ke = new Float64Array(81);
    plateStiffness(x, y, bending, theory === 'thin' ? null : shear, Ke);
    addFoundationStiffness(x, y, modulus, Float64Array.from(nodes.flatMap((_, c) => [x[c], y[c]])), 3, Ke);
    const dofs = nodes.flatMap((n) => [3 * n, 3 * n + 1, 3 * n + 2]);
    dofs.forEach((p, a) => {
      dofs.forEach((q, b) => {
        K.set(p, q, K.get(p, q) + Ke[9 * a + b]);
      });
    });
  }
  return K;
}

const difference = (A: Matrix, B: Matrix): number => Matrix.sub(A, B).abs().max() / Matrix.abs(B).max();

describe('block pattern', () => {
  it('couples the nodes of every triangle and no others, columns ascending, the diagonal last', () => {
    const { n, start, column, block } = blockPattern(mesh);
    expect(n).toBe(mesh.x.length);
    const pairs = new Set<string>();
    for (let i = 0; i < n; i++) {
      const row = [...column.subarray(start[i], start[i + 1])];
      expect(row).toEqual([...row].sort((a, b) => a - b));
      expect(new Set(row).size).toBe(row.length);
      expect(row.at(-1)).toBe(i);
      for (const j of row) pairs.add(`${i},${j}`);
    }
    const expected = new Set(Array.from({ length: n }, (_, i) => `${i},${i}`));
    for (let t = 0; t < mesh.region.length; t++) {
      const nodes = mesh.triangles.subarray(3 * t, 3 * t + 3);
      [
        [0, 0],
        [1, 1],
        [2, 2],
        [1, 2],
        [2, 0],
        [0, 1],
      ].forEach(([p, q], k) => {
        const [i, j] = [Math.max(nodes[p], nodes[q]), Math.min(nodes[p], nodes[q])];
        expected.add(`${i},${j}`);
        expect(column[block[6 * t + k]]).toBe(j);
        expect(block[6 * t + k]).toBeGreaterThanOrEqual(start[i]);
        expect(block[6 * t + k]).toBeLessThan(start[i + 1]);
      });
    }
    expect(pairs).toEqual(expected);
  });

  it('gives a node that no triangle uses a diagonal of its own', () => {
    const { n, start } = blockPattern({ x: new Float64Array(4), triangles: Uint32Array.of(0, 1, 3) });
    expect([n, ...start]).toEqual([4, 0, 1, 3, 4, 7]);
  });
});

describe('stiffness of a plate', () => {
  it.each(['thin', 'shear'] as const)('is the sum of its elements, %s', (theory) => {
    const K = assembleStiffness(mesh, blockPattern(mesh), rigidities, theory, [], free);
    expect(difference(denseOf(K), naive(theory, 0))).toBeLessThan(1e-15);
  });

  it('takes a foundation, whole or in parts that meet inside elements', () => {
    const find = locator(mesh);
    const cut = [
      [4.3, -1],
      [5.1, 4],
      [3.3, 11],
    ] as const;
    const left = [[-1, -1], ...cut, [-1, 11]] as const;
    const right = [cut[2], cut[1], cut[0], [11, -1], [11, 11]] as const;
    const everywhere = [foundationOver(mesh, find, 'all', 80, '')];
    const parts = [foundationOver(mesh, find, left, 80, ''), foundationOver(mesh, find, right, 80, '')];
    for (const foundations of [everywhere, parts]) {
      const K = assembleStiffness(mesh, blockPattern(mesh), rigidities, 'thin', foundations, free);
      expect(difference(denseOf(K), naive('thin', 80))).toBeLessThan(1e-13);
    }
  });

  it('refuses a foundation off the plate', () => {
    const square = [
      [20, 20],
      [21, 20],
      [21, 21],
      [20, 21],
    ] as const;
    expect(() => foundationOver(mesh, locator(mesh), square, 1, 'foundations.0.over')).toThrowError(
      expect.objectContaining({ code: 'OUTSIDE', path: 'foundations.0.over' }),
    );
  });

  it('is the elements turned to local axes, with held dofs alone on their diagonals', () => {
    const holds = holdsOf(mesh, [
      { along: { from: [0, 0], to: [10, 0] }, held: 'simple' },
      { along: { from: [10, 0], to: [10, 10] }, held: 'symmetry' },
    ]);
    // Axes at some angle at nodes inside, which no straight edge would give.
    const turned = { ...holds, cos: holds.cos.slice(), sin: holds.sin.slice(), mask: holds.mask.slice() };
    for (const node of [14, 15]) {
      turned.cos[node] = 0.6;
      turned.sin[node] = -0.8;
      turned.mask[node] = 2;
    }
    const n = 3 * mesh.x.length;
    const R = Matrix.eye(n, n);
    for (let i = 0; i < mesh.x.length; i++) {
      R.set(3 * i + 1, 3 * i + 1, turned.cos[i]);
      R.set(3 * i + 2, 3 * i + 2, turned.cos[i]);
      R.set(3 * i + 1, 3 * i + 2, -turned.sin[i]);
      R.set(3 * i + 2, 3 * i + 1, turned.sin[i]);
    }
    const expected = R.transpose().mmul(naive('shear', 0)).mmul(R);
    for (let p = 0; p < n; p++)
      for (let q = 0; q < n; q++) {
        const held = [p, q].some((dof) => turned.mask[Math.floor(dof / 3)] & (1 << (dof % 3)));
        if (held && p !== q) expected.set(p, q, 0);
      }
    const K = assembleStiffness(mesh, blockPattern(mesh), rigidities, 'shear', [], turned);
    expect(difference(denseOf(K), expected)).toBeLessThan(1e-15);
  });
});
