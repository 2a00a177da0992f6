import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { HeldEdge } from '../../src/assembly/held-edges.ts';
import { holdsOf } from '../../src/assembly/holds.ts';
import { blockPattern } from '../../src/assembly/pattern.ts';
import { assembleStiffness } from '../../src/assembly/stiffness.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { nodalMoments } from '../../src/results/moments.ts';
import type { Rigidity } from '../../src/section/rigidity.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { denseOf } from './dense-solve.ts';
import { irregularMesh } from './sample-meshes.ts';
import { solvePlate } from './solve-plate.ts';

const unit = rigidityOf({ D: 1, nu: 0.3 }, 'section');
/** Solid plate of D = 1 and this thickness. */
const solid = (thickness: number) => rigidityOf({ E: (12 * 0.91) / thickness ** 3, nu: 0.3, thickness }, 'section');

describe('patch test on an irregular mesh', () => {
  const mesh = irregularMesh(5);
  const inner = Array.from(mesh.x, (_, i) => i).filter((i) => !mesh.boundary.includes(i));
  /** Largest force or moment out of balance at inner nodes, relative to the largest at the boundary, lengths in mm. */
  const imbalance = (rigidity: Rigidity, theory: 'thin' | 'shear', u: Float64Array): number => {
    const K = denseOf(assembleStiffness(mesh, blockPattern(mesh), [rigidity], theory, [], holdsOf(mesh, [])));
    const f = K.mmul(Matrix.columnVector(Array.from(u))).to1DArray();
    const at = (nodes: readonly number[]) => Math.max(...nodes.flatMap((i) => f.slice(3 * i, 3 * i + 3).map(Math.abs)));
    return at(inner) / at([...mesh.boundary]);
  };
  const orthotropic: Rigidity = { bending: Float64Array.of(9, 2, 1, 5, -0.5, 3), shear: Float64Array.of(8, 1, 4) };
  const bent = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
    const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
    return [0.3 * x * x - 0.7 * x * y + 0.2 * y * y + x - 4, -0.7 * x + 0.4 * y, -(0.6 * x - 0.7 * y + 1)][p % 3];
  });

  it.each([
    ['thin, isotropic', 'thin', unit],
    ['thin, anisotropic', 'thin', orthotropic],
    ['shear, isotropic', 'shear', solid(0.5)],
    ['shear, anisotropic', 'shear', orthotropic],
  ] as const)('constant curvature is in balance and gives constant moments, %s', (_, theory, rigidity) => {
    expect(imbalance(rigidity, theory, bent)).toBeLessThan(1e-12);
    const [D11, D12, D13, D22, D23, D33] = rigidity.bending;
    const [kxx, kyy, twist] = [-0.6, -0.4, 1.4];
    const exact = [
      D11 * kxx + D12 * kyy + D13 * twist,
      D12 * kxx + D22 * kyy + D23 * twist,
      D13 * kxx + D23 * kyy + D33 * twist,
    ];
    const moments = nodalMoments(mesh, [rigidity], theory, bent);
    expect(Math.max(...moments.map((m, i) => Math.abs(m - exact[i % 3])))).toBeLessThan(1e-11);
  });

  it('constant shear is in balance in a plate soft in shear', () => {
    const soft: Rigidity = { bending: orthotropic.bending, shear: orthotropic.shear!.map((s) => 1e-13 * s) };
    const sheared = bent.map((_, p) => (p % 3 === 0 ? 0.3 * mesh.x[p / 3] - 0.8 * mesh.y[p / 3] : 0));
    const K = denseOf(assembleStiffness(mesh, blockPattern(mesh), [soft], 'shear', [], holdsOf(mesh, [])));
    const f = K.mmul(Matrix.columnVector(Array.from(sheared))).to1DArray();
    // Transverse forces only: constant shear is held by moments, which are loads of their own.
    const lift = (i: number) => Math.abs(f[3 * i]);
    expect(Math.max(...inner.map(lift)) / Math.max(...[...mesh.boundary].map(lift))).toBeLessThan(1e-9);
  });
});

describe('invariance', () => {
  it.each(['thin', 'shear'] as const)('gives the same plate however it is numbered and turned, %s', (theory) => {
    const square = irregularMesh(6);
    const n = square.x.length;
    const place = Array.from({ length: n }, (_, i) => (17 * i + 5) % n);
    const [cos, sin] = [Math.cos(0.7), Math.sin(0.7)];
    const turned: Mesh = {
      ...square,
      x: new Float64Array(n),
      y: new Float64Array(n),
      triangles: square.triangles.map((i) => place[i]),
      boundary: square.boundary.map((i) => place[i]),
    };
    place.forEach((to, i) => {
      turned.x[to] = cos * square.x[i] - sin * square.y[i] + 30;
      turned.y[to] = sin * square.x[i] + cos * square.y[i] - 12;
    });
    expect(new Set(place).size).toBe(n);
    const edges: HeldEdge[] = [{ along: 'all', held: 'simple' }];
    const [a, b] = [square, turned].map((mesh) => solvePlate({ mesh, rigidity: solid(1), theory, edges }).u);
    const scale = Math.max(...a.map(Math.abs));
    place.forEach((to, i) => {
      expect(Math.abs(a[3 * i] - b[3 * to])).toBeLessThan(1e-11 * scale);
      expect(Math.abs(cos * a[3 * i + 1] - sin * a[3 * i + 2] - b[3 * to + 1])).toBeLessThan(1e-11 * scale);
    });
  });
});
