import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { type Held, type HeldEdge, heldEdges } from './held-edges.ts';

/**
 * Held dofs of a mesh in local axes: dof 0 = w, dof 1 = rotation about d = (cos, sin), dof 2 = rotation about d turned
 * left. Axes are the global ones but at nodes where a rotation about some other axis is held.
 */
export interface Holds {
  /** `[nNodes]` */
  readonly cos: Float64Array;
  /** `[nNodes]` */
  readonly sin: Float64Array;
  /** `[nNodes]` bit a set when local dof a is held at zero. */
  readonly mask: Uint8Array;
  /** Nodes whose axes are not the global ones, ascending. */
  readonly turned: Uint32Array;
}

/** Directions that turn by no more than this, degrees, belong to one smooth edge: the chords of a polygonised curve. */
const SMOOTH = 15;
const SMOOTH_COS = Math.cos(((SMOOTH + 1e-6) * Math.PI) / 180);

/** What a held edge holds: w, the rotation about its normal (slope along it), the rotation about itself (slope across). */
const HOLDS: Readonly<Record<Held, { w: boolean; aboutNormal: boolean; aboutTangent: boolean }>> = {
  simple: { w: true, aboutNormal: true, aboutTangent: false },
  clamped: { w: true, aboutNormal: true, aboutTangent: true },
  symmetry: { w: false, aboutNormal: false, aboutTangent: true },
};

/**
 * Held dofs from held edges; where edges overlap the later one counts.
 *
 * `simple` is the hard support: w and the slope along the edge are zero. Where edges meet, a node has the constraints
 * of both, but axes that differ by at most 15 degrees are one, their mean. Holding the slope along *each* chord of a
 * polygonised curve would clamp every corner and converge to a plate that is too stiff (the Babuska paradox;
 * arXiv 2401.05897); with one mean tangent a node the curve keeps its free rotation.
 *
 * @throws Fault OUTSIDE with the path of the edge
 */
export function holdsOf(mesh: Mesh, edges: readonly HeldEdge[]): Holds {
  const n = mesh.x.length;
  const held = heldEdges(mesh, edges);

  const holds = { cos: new Float64Array(n).fill(1), sin: new Float64Array(n), mask: new Uint8Array(n) };
  const axes = new Map<number, [number, number][]>();
  for (const [e, kind] of held) {
    const [i, j] = [mesh.boundary[2 * e], mesh.boundary[2 * e + 1]];
    const [dx, dy] = [mesh.x[j] - mesh.x[i], mesh.y[j] - mesh.y[i]];
    const length = Math.hypot(dx, dy);
    const [tx, ty] = [dx / length, dy / length];
    const { w, aboutNormal, aboutTangent } = HOLDS[kind];
    for (const node of [i, j]) {
      if (w) holds.mask[node] |= 1;
      const list = axes.get(node) ?? [];
      axes.set(node, list);
      if (aboutNormal) list.push([-ty, tx]);
      if (aboutTangent) list.push([tx, ty]);
    }
  }
  for (const [node, list] of axes) holdAxes(holds, node, list);
  return {
    ...holds,
    turned: Uint32Array.from(axes.keys())
      .filter((node) => holds.cos[node] !== 1)
      .sort(),
  };
}

/**
 * Holds dofs 1 and 2 of a node along the axes given: along their mean when all are within {@link SMOOTH}, both otherwise.
 */
export function holdAxes(
  { cos, sin, mask }: Omit<Holds, 'turned'>,
  node: number,
  axes: readonly [number, number][],
): void {
  if (axes.length === 0) return;
  const [fx, fy] = axes[0];
  let [sx, sy] = [0, 0];
  for (const [ax, ay] of axes) {
    const along = ax * fx + ay * fy;
    if (Math.abs(along) < SMOOTH_COS) {
      mask[node] |= 6;
      return;
    }
    sx += Math.sign(along) * ax;
    sy += Math.sign(along) * ay;
  }
  const length = Math.hypot(sx, sy);
  cos[node] = sx / length;
  sin[node] = sy / length;
  mask[node] |= 2;
}

/** Turns a vector over all dofs, `[3 * nNodes]`, from global into local axes, in place. Held dofs keep their values. */
export function toLocal({ cos, sin, turned }: Holds, u: Float64Array): void {
  for (const i of turned) {
    const [a, b] = [u[3 * i + 1], u[3 * i + 2]];
    u[3 * i + 1] = cos[i] * a + sin[i] * b;
    u[3 * i + 2] = cos[i] * b - sin[i] * a;
  }
}

/** Turns a vector over all dofs, `[3 * nNodes]`, from local into global axes, in place. */
export function toGlobal({ cos, sin, turned }: Holds, u: Float64Array): void {
  for (const i of turned) {
    const [a, b] = [u[3 * i + 1], u[3 * i + 2]];
    u[3 * i + 1] = cos[i] * a - sin[i] * b;
    u[3 * i + 2] = cos[i] * b + sin[i] * a;
  }
}

/** Sets held dofs of a load in local axes to zero, in place: the hold takes what meets it. */
export function clearHeld({ mask }: Holds, f: Float64Array): void {
  for (let i = 0; i < mask.length; i++) for (let a = 0; a < 3; a++) if (mask[i] & (1 << a)) f[3 * i + a] = 0;
}

/** A row over global dofs as a row over the dofs in local axes that are not held. */
export function rowToLocal({ cos, sin, mask }: Holds, { dof, value }: SparseRow): SparseRow {
  const dofs: number[] = [];
  const values: number[] = [];
  for (let k = 0; k < dof.length; ) {
    const node = Math.floor(dof[k] / 3);
    const own = [0, 0, 0];
    for (; k < dof.length && dof[k] < 3 * node + 3; k++) own[dof[k] - 3 * node] = value[k];
    const [w, a, b] = own;
    const local = [w, cos[node] * a + sin[node] * b, cos[node] * b - sin[node] * a];
    local.forEach((v, c) => {
      if (v === 0 || mask[node] & (1 << c)) return;
      dofs.push(3 * node + c);
      values.push(v);
    });
  }
  return { dof: Uint32Array.from(dofs), value: Float64Array.from(values) };
}
