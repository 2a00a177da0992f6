import { COUPLED_ROWS, type InPlane } from '../assembly/in-plane.ts';
import { triangleCorners } from '../assembly/triangle-corners.ts';
import { membraneStrain } from '../element/membrane-triangle.ts';
import { twiceArea } from '../element/plate-kinematics.ts';
import { plateCurvature } from '../element/plate-triangle.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { type CornerGroups, cornerGroups } from './corner-groups.ts';

/**
 * Smoothed curvatures at the corners of every triangle: at each node the mean over the triangles around it with the same
 * section, weighted by area. Never averaged across sections, where the curvature across the interface truly jumps.
 *
 * Errors fall with h at edges and with h^2 inside; a fit to centroid values over patches of triangles was tried and is
 * coarser at clamped edges by a factor of two to six.
 *
 * @param mesh its `region` indexes `rigidities`
 * @param cases `[3 * nNodes]` global dofs of each
 * @param groups of the same mesh, where they are known
 * @returns for each case `[9 * nTriangles]`: kxx, kyy, 2 kxy at each corner of each triangle, 1/mm
 */
export function nodalCurvatures(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  cases: readonly Float64Array[],
  groups: CornerGroups = cornerGroups(mesh),
): Float64Array[] {
  return cornerCurvatures(mesh, rigidities, theory, cases).map((own) => smoothed(mesh, own, groups));
}

/** Curvatures of each element at its own corners; arguments and layout as those of {@link nodalCurvatures}. */
export function cornerCurvatures(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  cases: readonly Float64Array[],
): Float64Array[] {
  const { triangles, region } = mesh;
  const own = cases.map(() => new Float64Array(9 * region.length));
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const B = new Float64Array(27);
  for (let t = 0; t < region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const { bending, shear } = rigidities[region[t]];
    for (let c = 0; c < 3; c++) {
      const [l0, l1, l2] = CORNERS[c];
      plateCurvature(x, y, bending, theory === 'thin' ? null : shear, l0, l1, l2, B);
      for (let i = 0; i < cases.length; i++) times(B, cases[i], triangles, 3 * t, own[i], 9 * t + 3 * c);
    }
  }
  return own;
}

/**
 * Smoothed strains in the reference plane at the corners of every triangle, likewise, of a plate that stretches where it
 * bends.
 *
 * @param cases `[3 * nRows]` global dofs of each
 * @returns for each case `[9 * nTriangles]`: exx, eyy, 2 exy at each corner of each triangle
 */
export function nodalStretches(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  { rows }: InPlane,
  cases: readonly Float64Array[],
  groups: CornerGroups = cornerGroups(mesh),
): Float64Array[] {
  const own = cases.map(() => new Float64Array(3 * mesh.triangles.length));
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const B = new Float64Array(36);
  for (let t = 0; t < mesh.region.length; t++) {
    triangleCorners(mesh, t, x, y);
    for (let c = 0; c < 3; c++) {
      const [l0, l1, l2] = CORNERS[c];
      membraneStrain(x, y, l0, l1, l2, B);
      cases.forEach((u, i) => {
        for (let node = 0; node < 6; node++) {
          // Corners and sides in the plane come after the plate's three rows; their dofs are (none, u, v).
          const at = 3 * rows[COUPLED_ROWS * t + 3 + node];
          for (let r = 0; r < 3; r++)
            own[i][9 * t + 3 * c + r] += B[12 * r + 2 * node] * u[at + 1] + B[12 * r + 2 * node + 1] * u[at + 2];
        }
      });
    }
  }
  return own.map((values) => smoothed(mesh, values, groups));
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

/** Means over each group of corners, weighted by the triangles' area. */
export function smoothed(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  own: Float64Array,
  { of, corner }: CornerGroups,
): Float64Array {
  const weight = new Float64Array(corner.length);
  const sum = new Float64Array(3 * corner.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  for (let t = 0; t < mesh.region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const share = twiceArea(x, y);
    for (let at = 3 * t; at < 3 * t + 3; at++) {
      weight[of[at]] += share;
      for (let m = 0; m < 3; m++) sum[3 * of[at] + m] += share * own[3 * at + m];
    }
  }
  const mean = new Float64Array(own.length);
  for (let at = 0; at < of.length; at++)
    for (let m = 0; m < 3; m++) mean[3 * at + m] = sum[3 * of[at] + m] / weight[of[at]];
  return mean;
}
