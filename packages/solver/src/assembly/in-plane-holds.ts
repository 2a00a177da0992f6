import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Mesh } from '../mesh/mesh.ts';
import { type HeldEdge, heldEdges } from './held-edges.ts';
import { type Holds, holdAxes } from './holds.ts';
import type { InPlane } from './in-plane.ts';

/** Share of a rigid motion in what is held, squared, under which it is free. */
const FREE = 1e-10;

/**
 * Holds of all rows of a plate that stretches where it bends, from those of its plate rows.
 *
 * In the plane an edge of symmetry holds the displacement across it; simple and clamped edges and supports leave the plane
 * free to slide. What rigid motion is left is held at as few dofs as it takes, far apart: loads act across the plane, so
 * that these holds carry nothing.
 *
 * @throws Fault OUTSIDE with the path of the edge
 */
export function coupledHolds(mesh: Mesh, inPlane: InPlane, plate: Holds, edges: readonly HeldEdge[]): Holds {
  const n = mesh.x.length;
  const nRows = inPlane.pattern.n;
  const holds = { cos: new Float64Array(nRows).fill(1), sin: new Float64Array(nRows), mask: new Uint8Array(nRows) };
  holds.cos.set(plate.cos);
  holds.sin.set(plate.sin);
  holds.mask.set(plate.mask);
  holds.mask.fill(1, n);
  for (const [row, normals] of symmetryNormals(mesh, inPlane, edges)) holdAxes(holds, row, normals);
  const turned = Uint32Array.from(holds.cos.keys()).filter((row) => holds.cos[row] !== 1);
  holdRest(mesh, inPlane, holds);
  return { ...holds, turned };
}

/** Normals of the edges of symmetry that meet at each in-plane row. */
function symmetryNormals(
  mesh: Mesh,
  { ends }: InPlane,
  edges: readonly HeldEdge[],
): ReadonlyMap<number, [number, number][]> {
  const { x, y, boundary } = mesh;
  const n = x.length;
  const key = (i: number, j: number) => n * Math.max(i, j) + Math.min(i, j);
  const symmetric = [...heldEdges(mesh, edges)].flatMap(([e, held]) => (held === 'symmetry' ? [e] : []));
  const normals = new Map<number, [number, number][]>();
  if (symmetric.length === 0) return normals;
  const side = new Map<number, number>();
  for (let e = 0; e < ends.length / 2; e++) side.set(key(ends[2 * e], ends[2 * e + 1]), 2 * n + e);
  for (const e of symmetric) {
    const [i, j] = [boundary[2 * e], boundary[2 * e + 1]];
    const length = Math.hypot(x[j] - x[i], y[j] - y[i]);
    const normal: [number, number] = [(y[i] - y[j]) / length, (x[j] - x[i]) / length];
    for (const row of [n + i, n + j, side.get(key(i, j))!]) normals.set(row, [...(normals.get(row) ?? []), normal]);
  }
  return normals;
}

/** Holds the rigid motions in the plane that are still free, one dof for each. */
function holdRest({ x, y }: Mesh, { ends }: InPlane, { cos, sin, mask }: Omit<Holds, 'turned'>): void {
  const n = x.length;
  let [xMin, xMax, yMin, yMax] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < n; i++) {
    xMin = Math.min(xMin, x[i]);
    xMax = Math.max(xMax, x[i]);
    yMin = Math.min(yMin, y[i]);
    yMax = Math.max(yMax, y[i]);
  }
  const L = Math.max(xMax - xMin, yMax - yMin) / 2;
  /** Where an in-plane row stands: a node, or the middle of a side. */
  const middle = (values: Float64Array, row: number): number =>
    row < 2 * n ? values[row - n] : (values[ends[2 * (row - 2 * n)]] + values[ends[2 * (row - 2 * n) + 1]]) / 2;
  /** Displacement at a row along (dx, dy) in the motions x, y and turn. */
  const along = (row: number, dx: number, dy: number): number[] => [
    dx,
    dy,
    (dy * (middle(x, row) - (xMin + xMax) / 2) - dx * (middle(y, row) - (yMin + yMax) / 2)) / L,
  ];
  let held: number[][] = [];
  for (let row = n; row < mask.length; row++) {
    if (mask[row] & 2) held.push(along(row, cos[row], sin[row]));
    if (mask[row] & 4) held.push(along(row, -sin[row], cos[row]));
  }
  for (;;) {
    const free = freeMotion(held);
    if (free === null) return;
    // The dof that moves most in it.
    let [best, dof, most] = [n, 1, -1];
    for (let row = n; row < 2 * n; row++)
      for (const a of [1, 2]) {
        if (cos[row] !== 1 || mask[row] & (1 << a)) continue;
        const moves = Math.abs(dot(along(row, a === 1 ? 1 : 0, a === 1 ? 0 : 1), free));
        if (moves > most) [best, dof, most] = [row, a, moves];
      }
    mask[best] |= 1 << dof;
    held = [...held, along(best, dof === 1 ? 1 : 0, dof === 1 ? 0 : 1)];
  }
}

/** A motion that moves nothing held; `null` when there is none. */
function freeMotion(held: readonly number[][]): number[] | null {
  const gram = Matrix.zeros(3, 3);
  for (const row of held)
    for (let a = 0; a < 3; a++) for (let b = 0; b < 3; b++) gram.set(a, b, gram.get(a, b) + row[a] * row[b]);
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(gram, { assumeSymmetric: true });
  const mode = realEigenvalues.findIndex((value) => value <= FREE * Math.max(1, held.length));
  return mode < 0 ? null : eigenvectorMatrix.getColumn(mode);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i], 0);
}
