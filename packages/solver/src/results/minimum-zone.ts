import { bestFitPlane, type Plane } from './best-fit-plane.ts';

/** Affine image of the points, coordinates of order one, and the way back for plane normals. */
interface Scaled {
  readonly n: number;
  /** `[3 * n]` */
  readonly p: Float64Array;
  /** Metric width of a slab `0 <= m . p <= gap` is `gap / |M|`: M^T M of the normal m, in units of z. */
  readonly normSquared: (mx: number, my: number, mz: number) => number;
  readonly unit: number;
}

/** Direction of a pair of parallel planes and the range of the working points along it. */
interface Direction {
  readonly m: readonly [number, number, number];
  readonly norm: number;
  low: number;
  high: number;
}

/** Relative gap between the bounds at which the answer stands. */
const EXACT = 1e-13;
/** Distance from a line or plane, relative to the extent, under which points count as on it. */
const ON = 1e-14;

/**
 * Minimum-zone flatness FLTt (ISO 12781-1): least distance between two parallel planes that hold all points, exact to
 * rounding. Coplanar points, hence points on one line in the xy plane, give 0.
 *
 * The width of a subset A is a lower bound, and the range of all points along any direction an upper one. The width of
 * a polytope is attained square to a face or square to two edges (Houle and Toussaint 1988), so that of A is the least
 * range of A over the normals of its triples and pairs of pairs. Points that stick out of A along the best direction
 * join A until the bounds meet; a direction whose range exceeds the upper bound never comes back. A handful of rounds
 * settles a set that is thin across its extent, as a plate's field is; a set round as a ball takes long.
 *
 * @param points `[3 * n]` x, y, z of each point, mm
 * @param plane of least squares through them
 */
export function minimumZone(points: Float64Array, plane = bestFitPlane(points)): number {
  const scaled = scale(points, plane);
  if (scaled === null) return 0;
  const simplex = firstSimplex(scaled);
  if (simplex === null) return 0;

  const working: number[] = [];
  let directions: Direction[] = [];
  let upper = widthAlong(scaled, [0, 0, 1]).width;
  for (let entering = simplex; ; ) {
    for (const i of entering) {
      directions = directions.filter((direction) => include(scaled, direction, i, upper));
      directions.push(...newDirections(scaled, working, i, upper));
      working.push(i);
    }
    if (directions.length === 0) return upper * scaled.unit;
    const best = directions.reduce((a, b) => ((b.high - b.low) * a.norm < (a.high - a.low) * b.norm ? b : a));
    const lower = (best.high - best.low) / best.norm;
    const all = widthAlong(scaled, best.m);
    upper = Math.min(upper, all.width);
    if (upper <= lower * (1 + EXACT)) return upper * scaled.unit;
    entering = [all.lowest, all.highest].filter((i) => !working.includes(i));
    if (entering.length === 0) return upper * scaled.unit;
  }
}

/** Removes the least-squares tilt and brings every coordinate to order one; `null` for points that have no width. */
function scale(points: Float64Array, { a, bx, by }: Plane): Scaled | null {
  const n = points.length / 3;
  if (n < 4) return null;
  let [xMin, xMax, yMin, yMax, rounding, unit] = [Infinity, -Infinity, Infinity, -Infinity, 0, 0];
  const p = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) {
    const x = points[3 * i];
    const y = points[3 * i + 1];
    const z = points[3 * i + 2];
    p[3 * i + 2] = z - a - bx * x - by * y;
    xMin = Math.min(xMin, x);
    xMax = Math.max(xMax, x);
    yMin = Math.min(yMin, y);
    yMax = Math.max(yMax, y);
    unit = Math.max(unit, Math.abs(p[3 * i + 2]));
    rounding = Math.max(rounding, Math.abs(z) + Math.abs(bx * x) + Math.abs(by * y));
  }
  const extent = Math.max(xMax - xMin, yMax - yMin) / 2;
  if (!(extent > 0) || unit <= 8 * Number.EPSILON * (rounding + Math.abs(a))) return null;
  for (let i = 0; i < n; i++) {
    p[3 * i] = (points[3 * i] - (xMin + xMax) / 2) / extent;
    p[3 * i + 1] = (points[3 * i + 1] - (yMin + yMax) / 2) / extent;
    p[3 * i + 2] /= unit;
  }
  const shrink = unit / extent;
  const normSquared = (mx: number, my: number, mz: number) =>
    (shrink * mx - bx * mz) ** 2 + (shrink * my - by * mz) ** 2 + mz * mz;
  return { n, p, normSquared, unit };
}

/** Four points of the set that span space: each the farthest from those before; `null` when there are none. */
function firstSimplex({ n, p }: Scaled): number[] | null {
  /** The point with the largest `|M (p_i - p_0)|`; M by rows. A field of numbers is looked through faster than by a function. */
  const farthest = (m: readonly number[]): number => {
    let index = -1;
    let most = ON * ON;
    for (let i = 1; i < n; i++) {
      const x = p[3 * i] - p[0];
      const y = p[3 * i + 1] - p[1];
      const z = p[3 * i + 2] - p[2];
      const u = m[0] * x + m[1] * y + m[2] * z;
      const v = m[3] * x + m[4] * y + m[5] * z;
      const w = m[6] * x + m[7] * y + m[8] * z;
      const squared = u * u + v * v + w * w;
      if (squared > most) {
        index = i;
        most = squared;
      }
    }
    return index;
  };
  const second = farthest([1, 0, 0, 0, 1, 0, 0, 0, 1]);
  if (second < 0) return null;
  const [ax, ay, az] = [p[3 * second] - p[0], p[3 * second + 1] - p[1], p[3 * second + 2] - p[2]];
  // From the line: a x (p_i - p_0).
  const third = farthest([0, -az, ay, az, 0, -ax, -ay, ax, 0]);
  if (third < 0) return null;
  const [bx, by, bz] = [p[3 * third] - p[0], p[3 * third + 1] - p[1], p[3 * third + 2] - p[2]];
  // From the plane: (a x b) . (p_i - p_0).
  const fourth = farthest([ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx, 0, 0, 0, 0, 0, 0]);
  return fourth < 0 ? null : [0, second, third, fourth];
}

/** Range of all points along m: its metric width in units of z, and the points at its ends. */
function widthAlong({ n, p, normSquared }: Scaled, [mx, my, mz]: readonly [number, number, number]) {
  let [low, high, lowest, highest] = [Infinity, -Infinity, 0, 0];
  for (let i = 0; i < n; i++) {
    const at = mx * p[3 * i] + my * p[3 * i + 1] + mz * p[3 * i + 2];
    if (at < low) {
      low = at;
      lowest = i;
    }
    if (at > high) {
      high = at;
      highest = i;
    }
  }
  return { width: (high - low) / Math.sqrt(normSquared(mx, my, mz)), lowest, highest };
}

/** Widens the direction's range to point i; false when it is then wider than the upper bound. */
function include({ p }: Scaled, direction: Direction, i: number, upper: number): boolean {
  const [mx, my, mz] = direction.m;
  const at = mx * p[3 * i] + my * p[3 * i + 1] + mz * p[3 * i + 2];
  direction.low = Math.min(direction.low, at);
  direction.high = Math.max(direction.high, at);
  return direction.high - direction.low <= upper * direction.norm * (1 + EXACT);
}

/** Directions square to a triple or to two pairs of which `entering` is one point and the working points the others. */
function newDirections(scaled: Scaled, working: readonly number[], entering: number, upper: number): Direction[] {
  const { p, normSquared } = scaled;
  const found: Direction[] = [];
  const consider = (i: number, j: number, k: number, l: number): void => {
    const [ax, ay, az] = [p[3 * j] - p[3 * i], p[3 * j + 1] - p[3 * i + 1], p[3 * j + 2] - p[3 * i + 2]];
    const [bx, by, bz] = [p[3 * l] - p[3 * k], p[3 * l + 1] - p[3 * k + 1], p[3 * l + 2] - p[3 * k + 2]];
    const [mx, my, mz] = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
    const norm = Math.sqrt(normSquared(mx, my, mz));
    if (norm === 0) return;
    const limit = upper * norm * (1 + EXACT);
    let low = mx * p[3 * i] + my * p[3 * i + 1] + mz * p[3 * i + 2];
    let high = low;
    for (const v of working) {
      const at = mx * p[3 * v] + my * p[3 * v + 1] + mz * p[3 * v + 2];
      low = Math.min(low, at);
      high = Math.max(high, at);
      if (high - low > limit) return;
    }
    found.push({ m: [mx, my, mz], norm, low, high });
  };
  for (let a = 0; a < working.length; a++)
    for (let b = 0; b < working.length; b++) {
      if (b === a) continue;
      if (a < b) consider(entering, working[a], entering, working[b]);
      for (let c = b + 1; c < working.length; c++) if (c !== a) consider(entering, working[a], working[b], working[c]);
    }
  return found;
}
