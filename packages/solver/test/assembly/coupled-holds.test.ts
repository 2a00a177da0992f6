import { determinant, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { HeldEdge } from '../../src/assembly/held-edges.ts';
import { holdsOf } from '../../src/assembly/holds.ts';
import { coupledHolds } from '../../src/assembly/in-plane-holds.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { mesh, placeOf, plane } from './coupled-samples.ts';

const n = mesh.x.length;
const side = (from: readonly [number, number], to: readonly [number, number], held: HeldEdge['held']): HeldEdge => ({
  along: { from, to },
  held,
});
const holdsFor = (edges: readonly HeldEdge[]) => coupledHolds(mesh, plane, holdsOf(mesh, edges), edges);

/** Each held in-plane dof as what the rigid motions x, y and a turn about the middle of the plate move there. */
function heldMotions({ cos, sin, mask }: ReturnType<typeof holdsFor>): number[][] {
  const found: number[][] = [];
  for (let row = n; row < plane.pattern.n; row++) {
    const [x, y] = placeOf(row);
    const add = (dx: number, dy: number) => found.push([dx, dy, (dy * (x - 5) - dx * (y - 5)) / 5]);
    if (mask[row] & 2) add(cos[row], sin[row]);
    if (mask[row] & 4) add(-sin[row], cos[row]);
  }
  return found;
}

/** Determinant of the products of the three motions over what is held; 0 for a plate that can still move. */
function firmness(held: readonly number[][]): number {
  const rows = new Matrix(held.map((row) => [...row]));
  return determinant(rows.transpose().mmul(rows));
}

describe('holds in the plane', () => {
  it('take three dofs of a plate that slides freely, far apart, so that no rigid motion is left', () => {
    for (const edges of [[], [side([0, 0], [10, 0], 'simple'), side([0, 0], [0, 10], 'clamped')]]) {
      const held = heldMotions(holdsFor(edges));
      expect(held.length).toBe(3);
      // Translations at unit share and a turn by a lever as long as half the plate.
      expect(firmness(held)).toBeGreaterThan(0.5);
    }
  });

  it('hold what crosses an edge of symmetry at its nodes and the middles of its sides, and the slide along it once', () => {
    const holds = holdsFor([side([0, 0], [10, 0], 'symmetry')]);
    const held = heldMotions(holds);
    let on = 0;
    for (let row = n; row < plane.pattern.n; row++) {
      if (placeOf(row)[1] !== 0) continue;
      on++;
      expect(holds.mask[row] & 2).toBe(2);
      expect(Math.abs(holds.sin[row])).toBeCloseTo(1, 12);
      expect([...holds.turned]).toContain(row);
    }
    expect(on).toBe(9);
    expect(held.length).toBe(on + 1);
    expect(firmness(held)).toBeGreaterThan(0.5);
  });

  it('add none where two edges of symmetry meet, and hold both displacements at their corner', () => {
    const holds = holdsFor([side([0, 0], [10, 0], 'symmetry'), side([10, 0], [10, 10], 'symmetry')]);
    const corner = [...mesh.x.keys()].find((i) => mesh.x[i] === 10 && mesh.y[i] === 0) ?? -1;
    expect(holds.mask[n + corner] & 6).toBe(6);
    const held = heldMotions(holds);
    expect(held.length).toBe(2 * 9);
    expect(firmness(held)).toBeGreaterThan(0.5);
  });

  it('are the same wherever the plate lies and however large it is', () => {
    const held = (moved: Mesh) => [...coupledHolds(moved, plane, holdsOf(moved, []), []).mask];
    const placed = (scale: number, dx: number, dy: number): Mesh => ({
      ...mesh,
      x: mesh.x.map((x) => scale * x + dx),
      y: mesh.y.map((y) => scale * y + dy),
    });
    const own = held(mesh);
    expect(held(placed(1, 300, -200))).toEqual(own);
    expect(held(placed(1, -50, 120))).toEqual(own);
    expect(held(placed(1000, 0, 0))).toEqual(own);
  });

  it('leave one slide along an edge of symmetry that runs askew, which takes one dof more', () => {
    const [c, s] = [Math.cos(0.6), Math.sin(0.6)];
    const askew: Mesh = {
      ...mesh,
      x: mesh.x.map((x, i) => c * x - s * mesh.y[i] + 40),
      y: mesh.y.map((y, i) => s * mesh.x[i] + c * y - 10),
    };
    const edge = side([40, -10], [40 + 10 * c, -10 + 10 * s], 'symmetry');
    const { mask } = coupledHolds(askew, plane, holdsOf(askew, [edge]), [edge]);
    // Five nodes and four middles of sides on the edge, and the slide.
    const held = [...mask.subarray(n)].reduce((sum, bits) => sum + ((bits >> 1) & 1) + ((bits >> 2) & 1), 0);
    expect(held).toBe(5 + 4 + 1);
  });

  it('leave the rows of the plate as they are, and hold the dof that in-plane rows lack', () => {
    const edges = [side([0, 0], [10, 0], 'simple'), side([10, 0], [10, 10], 'symmetry')];
    const [own, all] = [holdsOf(mesh, edges), holdsFor(edges)];
    for (const part of ['mask', 'cos', 'sin'] as const) expect([...all[part].subarray(0, n)]).toEqual([...own[part]]);
    for (let row = n; row < plane.pattern.n; row++) expect(all.mask[row] & 1).toBe(1);
  });
});
