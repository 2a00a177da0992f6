import { describe, expect, it } from 'vitest';
import type { HeldEdge } from '../../src/assembly/held-edges.ts';
import { clearHeld, holdsOf, rowToLocal, toGlobal, toLocal } from '../../src/assembly/holds.ts';
import { dotRow } from '../../src/linear-algebra/sparse-row.ts';
import { discMesh, mappedMesh, nearest, rectangleMesh } from './sample-meshes.ts';

const square = rectangleMesh(4);
const bottom = { from: [0, 0], to: [1, 0] } as const;
const right = { from: [1, 0], to: [1, 1] } as const;
const at = (edges: readonly HeldEdge[], x: number, y: number, mesh = square) => {
  const { mask, cos, sin } = holdsOf(mesh, edges);
  const node = nearest(mesh, x, y);
  return { mask: mask[node], axis: [cos[node], sin[node]] };
};
const along = (x: number, y: number) => [expect.closeTo(x, 12), expect.closeTo(y, 12)];

describe('held dofs', () => {
  it('holds w and the rotation about the normal on a simple edge', () => {
    const { mask, axis } = at([{ along: bottom, held: 'simple' }], 0.5, 0);
    expect(mask).toBe(0b011);
    expect(axis.map(Math.abs)).toEqual(along(0, 1));
  });

  it('holds everything on a clamped edge, and only the slope across a symmetry edge', () => {
    expect(at([{ along: bottom, held: 'clamped' }], 0.5, 0).mask).toBe(0b111);
    const { mask, axis } = at([{ along: right, held: 'symmetry' }], 1, 0.5);
    expect(mask).toBe(0b010);
    expect(axis.map(Math.abs)).toEqual(along(0, 1));
  });

  it('leaves the rest free', () => {
    expect(at([{ along: bottom, held: 'clamped' }], 0.5, 0.5).mask).toBe(0);
    expect(at([{ along: bottom, held: 'clamped' }], 1, 0.5).mask).toBe(0);
  });

  it('applies both edges at a corner', () => {
    const both = (first: HeldEdge['held'], second: HeldEdge['held']) =>
      at(
        [
          { along: bottom, held: first },
          { along: right, held: second },
        ],
        1,
        0,
      ).mask;
    expect(both('simple', 'simple')).toBe(0b111);
    expect(both('symmetry', 'symmetry')).toBe(0b110);
    expect(both('simple', 'clamped')).toBe(0b111);
    // The slope along the simple edge and across the symmetry edge is one and the same at a right angle.
    expect(both('simple', 'symmetry')).toBe(0b011);
  });

  it('lets a later edge count where two are given', () => {
    const edges: HeldEdge[] = [
      { along: 'all', held: 'clamped' },
      { along: bottom, held: 'simple' },
    ];
    expect(at(edges, 0.5, 0).mask).toBe(0b011);
    expect(at(edges, 1, 0.5).mask).toBe(0b111);
  });

  it('takes the mean tangent of a polygonised curve up to a turn of 15 degrees, and corners beyond', () => {
    // Edges turn by 60/rings degrees: 15 with four rings, 20 with three.
    const smooth = discMesh(4);
    for (const angle of [0, 15, 165]) {
      const [x, y] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
      const { mask, axis } = at([{ along: 'all', held: 'simple' }], x, y, smooth);
      expect(mask).toBe(0b011);
      expect(Math.abs(axis[0] * x + axis[1] * y)).toBeCloseTo(1, 12);
    }
    expect(at([{ along: 'all', held: 'simple' }], 1, 0, discMesh(3)).mask).toBe(0b111);
  });

  it('finds edges on a slanted side, and refuses a segment that lies on none', () => {
    const slanted = mappedMesh(3, (s, t) => [s + 0.37 * t, 0.93 * t + 0.11 * s]);
    const from = [1, 0.11] as const;
    const to = [1.37, 1.04] as const;
    const { mask } = holdsOf(slanted, [{ along: { from, to }, held: 'clamped' }]);
    expect([...mask].filter((m) => m === 0b111)).toHaveLength(4);
    expect(() =>
      holdsOf(slanted, [
        { along: 'all', held: 'simple' },
        { along: { from: [0, 0.5], to: [1, 0.5] }, held: 'simple' },
      ]),
    ).toThrowError(expect.objectContaining({ code: 'OUTSIDE', path: 'edges.1.along' }));
    expect(() => holdsOf(slanted, [{ along: { from, to: from }, held: 'simple' }])).toThrowError(
      expect.objectContaining({ code: 'OUTSIDE' }),
    );
  });
});

describe('local axes', () => {
  const mesh = discMesh(5);
  const holds = holdsOf(mesh, [{ along: 'all', held: 'simple' }]);
  const u = Float64Array.from({ length: 3 * mesh.x.length }, (_, i) => Math.sin(1 + i * i));

  it('turns vectors there and back', () => {
    const v = u.slice();
    toLocal(holds, v);
    expect(Math.max(...v.map((value, i) => Math.abs(value - u[i])))).toBeGreaterThan(0.1);
    toGlobal(holds, v);
    expect(Math.max(...v.map((value, i) => Math.abs(value - u[i])))).toBeLessThan(1e-15);
  });

  it('gives the same value of a row on either side, for a field that the holds allow', () => {
    const local = u.slice();
    clearHeld(holds, local);
    const global = local.slice();
    toGlobal(holds, global);
    const row = {
      dof: Uint32Array.from(u, (_, i) => i).filter((i) => i % 5 !== 2),
      value: u.filter((_, i) => i % 5 !== 2).map(Math.cos),
    };
    const inside = rowToLocal(holds, row);
    expect(dotRow(inside, local)).toBeCloseTo(dotRow(row, global), 12);
    for (const dof of inside.dof) expect(holds.mask[Math.floor(dof / 3)] & (1 << (dof % 3))).toBe(0);
    expect([...inside.dof]).toEqual([...inside.dof].sort((a, b) => a - b));
  });
});
