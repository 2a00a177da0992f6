import { describe, expect, it } from 'vitest';
import { foundationOver } from '../../src/assembly/foundation.ts';
import type { HeldEdge } from '../../src/assembly/held-edges.ts';
import { pointRow } from '../../src/assembly/rows.ts';
import { addRow } from '../../src/linear-algebra/sparse-row.ts';
import { locator } from '../../src/mesh/locate.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { irregularMesh, mappedMesh } from './sample-meshes.ts';
import { solvePlate } from './solve-plate.ts';

const unit = rigidityOf({ D: 1, nu: 0.3 }, 'section');

describe('elastic foundation', () => {
  it('under an infinite plate with a point load: w = P l^2/(8 D), Timoshenko and Woinowsky-Krieger, Art. 57', () => {
    // l = 1, a quarter plate of 7 l, graded towards the load; the deflection there has died out to e^-5.
    const mesh = mappedMesh(14, (s, t) => [7 * s ** 1.5, 7 * t ** 1.5]);
    const find = locator(mesh);
    const load = new Float64Array(3 * mesh.x.length);
    addRow(load, 1 / 4, pointRow(mesh, find, [0, 0], ''));
    const edges: HeldEdge[] = [
      { along: { from: [0, 0], to: [7, 0] }, held: 'symmetry' },
      { along: { from: [0, 0], to: [0, 7] }, held: 'symmetry' },
    ];
    const foundations = [foundationOver(mesh, find, 'all', 1, '')];
    expect(Math.abs(8 * solvePlate({ mesh, rigidity: unit, edges, foundations, load }).w(0, 0) - 1)).toBeLessThan(0.01);
  });

  it('carries a rigid sinking alone: w = F/(k A)', () => {
    const mesh = irregularMesh(4);
    const foundations = [foundationOver(mesh, locator(mesh), 'all', 0.25, '')];
    const { u } = solvePlate({ mesh, rigidity: unit, foundations });
    for (let i = 0; i < mesh.x.length; i++) expect(u[3 * i]).toBeCloseTo(4, 9);
  });
});
