import { triangleCorners } from '../assembly/triangle-corners.ts';
import { plateCurvature } from '../element/plate-triangle.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Rigidity } from '../section/rigidity.ts';

/**
 * Smoothed curvatures at the corners of every triangle: at each node the mean over the triangles around it with the same
 * section, weighted by area. Never averaged across sections, where the curvature across the interface truly jumps.
 *
 * Errors fall with h at edges and with h^2 inside; a fit to centroid values over patches of triangles was tried and is
 * coarser at clamped edges by a factor of two to six.
 *
 * @param mesh its `region` indexes `rigidities`
 * @param cases `[3 * nNodes]` global dofs of each
 * @returns for each case `[9 * nTriangles]`: kxx, kyy, 2 kxy at each corner of each triangle, 1/mm
 */
export function nodalCurvatures(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  cases: readonly Float64Array[],
): Float64Array[] {
  const { triangles, region } = mesh;
  const own = cases.map(() => new Float64Array(9 * region.length));
  const area = new Float64Array(region.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const B = new Float64Array(27);
  for (let t = 0; t < region.length; t++) {
    triangleCorners(mesh, t, x, y);
    area[t] = ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])) / 2;
    const { bending, shear } = rigidities[region[t]];
    for (let c = 0; c < 3; c++) {
      const [l0, l1, l2] = CORNERS[c];
      plateCurvature(x, y, bending, theory === 'thin' ? null : shear, l0, l1, l2, B);
      for (let i = 0; i < cases.length; i++) times(B, cases[i], triangles, 3 * t, own[i], 9 * t + 3 * c);
    }
  }
  return averaged(mesh, own, area);
}

/** Barycentric coordinates of the corners. */
const CORNERS = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

/** `B u` of the triangle whose nodes begin at `first`, out at `at`. */
function times(
  B: Float64Array,
  u: Float64Array,
  triangles: Uint32Array,
  first: number,
  out: Float64Array,
  at: number,
): void {
  let kxx = 0;
  let kyy = 0;
  let twist = 0;
  for (let p = 0, c = 0; c < 3; c++) {
    const node = 3 * triangles[first + c];
    for (let d = 0; d < 3; d++, p++) {
      const dof = u[node + d];
      kxx += B[p] * dof;
      kyy += B[9 + p] * dof;
      twist += B[18 + p] * dof;
    }
  }
  out[at] = kxx;
  out[at + 1] = kyy;
  out[at + 2] = twist;
}

/** Means at each node over the corners there of triangles with the same region, weighted by the triangles' area. */
function averaged(
  { x, triangles, region }: Pick<Mesh, 'x' | 'triangles' | 'region'>,
  own: readonly Float64Array[],
  area: Float64Array,
): Float64Array[] {
  const { start, corner } = cornersByNode(triangles, x.length);
  const triangle = corner.map((c) => Math.floor(c / 3));
  const smooth = own.map(({ length }) => new Float64Array(length));
  for (let node = 0; node < x.length; node++)
    for (let p = start[node]; p < start[node + 1]; p++) {
      const section = region[triangle[p]];
      let first = start[node];
      while (region[triangle[first]] !== section) first++;
      for (let i = 0; i < own.length; i++) {
        if (first === p) sumAround(p, start[node + 1], section, own[i], smooth[i]);
        else smooth[i].copyWithin(3 * corner[p], 3 * corner[first], 3 * corner[first] + 3);
      }
    }
  return smooth;

  function sumAround(p: number, end: number, section: number, values: Float64Array, out: Float64Array): void {
    const at = 3 * corner[p];
    let weight = 0;
    for (let q = p; q < end; q++) {
      if (region[triangle[q]] !== section) continue;
      const share = area[triangle[q]];
      weight += share;
      for (let m = 0; m < 3; m++) out[at + m] += share * values[3 * corner[q] + m];
    }
    for (let m = 0; m < 3; m++) out[at + m] /= weight;
  }
}

/** Corners `3 * t + c` around each node, `corner[start[node]]` to `corner[start[node + 1] - 1]`. */
function cornersByNode(triangles: Uint32Array, n: number): { start: Uint32Array; corner: Uint32Array } {
  const start = new Uint32Array(n + 1);
  for (const node of triangles) start[node + 1]++;
  for (let i = 0; i < n; i++) start[i + 1] += start[i];
  const next = start.slice();
  const corner = new Uint32Array(triangles.length);
  triangles.forEach((node, c) => {
    corner[next[node]++] = c;
  });
  return { start, corner };
}
