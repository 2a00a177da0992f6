import { describe, expect, it } from 'vitest';
import { locator } from '../../src/mesh/locate.ts';
import { fieldGap } from '../../src/results/field-gap.ts';
import { sampleAreas } from '../../src/results/sample-areas.ts';
import type { SolvedCase } from '../../src/structure/groups.ts';
import { irregularMesh } from '../assembly/sample-meshes.ts';

/** Coefficients of 1, x, y, x^2 + y^2 about the middle (5, 5) of a square of 10 mm: elements hold it exactly. */
type Field = readonly [number, number, number, number];
const NONE: Field = [0, 0, 0, 0];

/** A case deflected so, measured from a fastener plane. */
function deflected(n: number, [c, cx, cy, q]: Field, plane: readonly [number, number, number] = [0, 0, 0]) {
  const mesh = irregularMesh(n);
  const u = new Float64Array(3 * mesh.x.length);
  mesh.x.forEach((at, i) => {
    const [x, y] = [at - 5, mesh.y[i] - 5];
    u.set([c + cx * x + cy * y + q * (x * x + y * y), cy + 2 * q * y, -cx - 2 * q * x], 3 * i);
  });
  const solved = { structure: { mesh, locator: locator(mesh) }, solution: { u } } as Partial<SolvedCase> as SolvedCase;
  return { solved, result: { fastenerPlane: plane } };
}

const all = sampleAreas(irregularMesh(5), 0, ['A1']);
const gap = (fine: Field, coarse: Field, plane?: readonly [number, number, number]) =>
  fieldGap(all, deflected(5, fine, plane), deflected(3, coarse));

describe('how far the deflections on two meshes are apart', () => {
  it('is nothing where both hold the same field', () => {
    const { bow, flatness } = gap([1, 0.2, -0.3, 0.04], [1, 0.2, -0.3, 0.04]);
    expect(bow).toBeLessThan(1e-12);
    expect(flatness).toBeLessThan(1e-12);
  });

  it('is bow alone, against the fastener plane, where they differ by a plane', () => {
    // 0.5 + 0.01 (x - 5) - 0.02 (y - 5) is largest at (10, 0).
    const { bow, flatness } = gap([0.5, 0.01, -0.02, 0], NONE);
    expect(bow).toBeCloseTo(0.65, 12);
    expect(flatness).toBeLessThan(1e-12);
    // The same plane moved with the fasteners: 0.5 - 0.05 + 0.1 = 0.55 at x = y = 0.
    expect(gap([0.5, 0.01, -0.02, 0], NONE, [0.55, 0.01, -0.02]).bow).toBeLessThan(1e-12);
  });

  it('is the dome between them, though both are as flat', () => {
    // 0.004 (x^2 + y^2) either way: both bow by 0.2 and are flat within 0.2; the difference is twice that.
    const { bow, flatness } = gap([0, 0, 0, 0.004], [0, 0, 0, -0.004]);
    expect(bow).toBeCloseTo(0.4, 9);
    expect(flatness).toBeGreaterThan(0.4 - 1e-9);
    expect(flatness).toBeLessThan(0.4 * 1.1);
  });
});
