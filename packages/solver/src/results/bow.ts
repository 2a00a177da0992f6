import { interiorExtremum, type TriangleExtreme } from '../element/interior-extremum.ts';
import type { Point } from '../geometry/point.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Plane } from './best-fit-plane.ts';

/** A signed value in mm and where it stands. */
export interface Located {
  readonly value: number;
  readonly at: Point;
}

/**
 * Bow of an area: its largest deviation from a plane, signed, away from the board positive. The largest value inside an
 * element counts, not only nodes.
 *
 * @param u `[3 * nNodes]` w, thetaX, thetaY
 * @param plane fastener plane as the seats moved
 * @param triangles those of the area, at least one
 */
export function largestDeviation(mesh: Mesh, u: Float64Array, plane: Plane, triangles: Uint32Array): Located {
  const { min, max } = extremeDeviations(mesh, u, plane, triangles);
  return max.value >= -min.value ? max : min;
}

/** Largest and smallest deviation from a plane over some triangles, interior extremes included. */
export function extremeDeviations(
  mesh: Mesh,
  u: Float64Array,
  { a, bx, by }: Plane,
  triangles: Uint32Array,
): { readonly min: Located; readonly max: Located } {
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const ue = new Float64Array(9);
  let min: TriangleExtreme = { value: Infinity, x: 0, y: 0 };
  let max: TriangleExtreme = { value: -Infinity, x: 0, y: 0 };
  for (const t of triangles) {
    let [lowest, highest] = [Infinity, -Infinity];
    for (let corner = 0; corner < 3; corner++) {
      const node = mesh.triangles[3 * t + corner];
      x[corner] = mesh.x[node];
      y[corner] = mesh.y[node];
      for (let dof = 0; dof < 3; dof++) ue[3 * corner + dof] = u[3 * node + dof];
      const deviation = ue[3 * corner] - a - bx * x[corner] - by * y[corner];
      lowest = Math.min(lowest, deviation);
      highest = Math.max(highest, deviation);
    }
    const bulge = greatestBulge(x, y, ue);
    if (lowest - bulge >= min.value && highest + bulge <= max.value) continue;
    const inside = interiorExtremum(x, y, ue, [a, bx, by]);
    if (inside.min.value < min.value) min = inside.min;
    if (inside.max.value > max.value) max = inside.max;
  }
  return { min: located(min), max: located(max) };
}

/**
 * Bound on how far w may leave the plane through its corner values: with `w = sum L_n w_n + sum c_k L_i L_j` each
 * product of coordinates is at most 1/4, and c_k is half the change of slope along side k times its length.
 */
function greatestBulge(x: Float64Array, y: Float64Array, u: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < 3; i++) {
    const j = i === 2 ? 0 : i + 1;
    sum += Math.abs((u[3 * j + 2] - u[3 * i + 2]) * (x[j] - x[i]) - (u[3 * j + 1] - u[3 * i + 1]) * (y[j] - y[i]));
  }
  return sum / 8;
}

function located({ value, x, y }: TriangleExtreme): Located {
  return { value, at: [x, y] };
}
