import type { Holds } from '../../src/assembly/holds.ts';
import { inPlaneOf } from '../../src/assembly/in-plane.ts';
import { blockPattern } from '../../src/assembly/pattern.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import type { Membrane } from '../../src/section/membrane.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { irregularMesh } from './sample-meshes.ts';

/** An irregular plate of two sections that stretch where they bend, the second one orthotropic and skew. */
export const mesh: Mesh = {
  ...irregularMesh(4),
  region: Uint32Array.from({ length: 32 }, (_, t) => (t % 5 < 2 ? 1 : 0)),
};
export const plane = inPlaneOf(mesh, blockPattern(mesh));
export const rigidities = [
  rigidityOf({ E: 300000, nu: 0.22, thickness: 2 }, 'section'),
  rigidityOf({ Dx: 4e5, Dy: 1e5, D1: 3e4, Dxy: 6e4 }, 'regions.0.section'),
];
export const membranes: readonly Membrane[] = [
  {
    stretching: Float64Array.of(6e5, 1.3e5, 0, 6e5, 0, 2.3e5),
    offset: Float64Array.of(0.7, 0, 0, 0, 0.7, 0, 0, 0, 0.7),
  },
  {
    stretching: Float64Array.of(9e5, 2e5, 3e4, 4e5, -2e4, 2e5),
    offset: Float64Array.of(-1.1, 0.2, 0.1, 0.3, -0.8, 0, 0.1, -0.2, -0.9),
  },
];

/** Nothing held, all axes global. */
export const loose = (nRows: number): Holds => ({
  cos: new Float64Array(nRows).fill(1),
  sin: new Float64Array(nRows),
  mask: new Uint8Array(nRows),
  turned: new Uint32Array(0),
});

/** Where an in-plane row stands: a node, or the middle of a side. */
export function placeOf(row: number): readonly [number, number] {
  const n = mesh.x.length;
  const nodes = row < 2 * n ? [row - n, row - n] : plane.ends.subarray(2 * (row - 2 * n), 2 * (row - 2 * n) + 2);
  return [(mesh.x[nodes[0]] + mesh.x[nodes[1]]) / 2, (mesh.y[nodes[0]] + mesh.y[nodes[1]]) / 2];
}
