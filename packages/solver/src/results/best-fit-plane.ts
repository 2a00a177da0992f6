/** The plane `z = a + bx x + by y`; a in the unit of z, bx and by dimensionless. */
export interface Plane {
  readonly a: number;
  readonly bx: number;
  readonly by: number;
}

/** Spread across the points' main direction, squared and relative, under which they count as one line. */
const COLLINEAR = 1e-14;

/**
 * Least-squares plane of points, deviations measured along z: minimises `sum weight (z - a - bx x - by y)^2`.
 *
 * Works about the centroid, so that offsets and the disproportion of z (micrometres) and x, y (tens of millimetres)
 * cost no digits. Points on one line in the xy plane, or fewer than three, leave a tilt open: it is then the smallest
 * one that fits. No points at all, or no weight, give the plane z = 0.
 *
 * @param points `[3 * n]` x, y, z of each point
 * @param weights `[n]` not negative; equal when left out
 */
export function bestFitPlane(points: Float64Array, weights?: Float64Array): Plane {
  const n = points.length / 3;
  let [total, xc, yc, zc] = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = weights === undefined ? 1 : weights[i];
    total += weight;
    xc += weight * points[3 * i];
    yc += weight * points[3 * i + 1];
    zc += weight * points[3 * i + 2];
  }
  if (!(total > 0)) return { a: 0, bx: 0, by: 0 };
  xc /= total;
  yc /= total;
  zc /= total;

  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = weights === undefined ? 1 : weights[i];
    const x = points[3 * i] - xc;
    const y = points[3 * i + 1] - yc;
    const z = points[3 * i + 2] - zc;
    xx += weight * x * x;
    xy += weight * x * y;
    yy += weight * y * y;
    xz += weight * x * z;
    yz += weight * y * z;
  }
  const [bx, by] = solveSymmetric(xx, xy, yy, xz, yz);
  return { a: zc - bx * xc - by * yc, bx, by };
}

/** `[xx, xy; xy, yy]^+ [xz; yz]`, the pseudo-inverse by eigenvectors; positive semidefinite matrices only. */
function solveSymmetric(xx: number, xy: number, yy: number, xz: number, yz: number): [number, number] {
  const radius = Math.hypot((xx - yy) / 2, xy);
  const large = (xx + yy) / 2 + radius;
  if (!(large > 0)) return [0, 0];
  const small = (xx * yy - xy * xy) / large;
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const along = (c * xz + s * yz) / large;
  const across = small > COLLINEAR * large ? (c * yz - s * xz) / small : 0;
  return [c * along - s * across, s * along + c * across];
}
