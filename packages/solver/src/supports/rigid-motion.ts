import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import { multiply } from '../linear-algebra/multiply.ts';

/** Rigid motions of the plate that nothing but its supports holds back. */
export interface RigidMotion {
  /** Number of free motions r, 0 to 3. */
  readonly count: number;
  /** r fields `Float64Array [3 * nRows]` in local axes of the holds, of order one: an orthonormal basis of lift and two tilts. */
  readonly fields: readonly Float64Array[];
}

/** Energy of a motion, relative to the stiffest node, under which it counts as free. */
const FREE = 1e-10;

/**
 * Lift and tilts about the middle of the plate, scaled to order one at its rim:
 * `w = 1`, `w = (y - yc)/L` with `thetaX = 1/L`, `w = (x - xc)/L` with `thetaY = -1/L`. They move nothing in the plane.
 */
function liftAndTilts(x: Float64Array, y: Float64Array, rows: number): Float64Array[] {
  let [xMin, xMax, yMin, yMax] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < x.length; i++) {
    xMin = Math.min(xMin, x[i]);
    xMax = Math.max(xMax, x[i]);
    yMin = Math.min(yMin, y[i]);
    yMax = Math.max(yMax, y[i]);
  }
  const [xc, yc] = [(xMin + xMax) / 2, (yMin + yMax) / 2];
  const L = Math.max(xMax - xMin, yMax - yMin) / 2;
  const [lift, tiltX, tiltY] = [0, 1, 2].map(() => new Float64Array(3 * rows));
  for (let i = 0; i < x.length; i++) {
    lift[3 * i] = 1;
    tiltX[3 * i] = (y[i] - yc) / L;
    tiltX[3 * i + 1] = 1 / L;
    tiltY[3 * i] = (x[i] - xc) / L;
    tiltY[3 * i + 2] = -1 / L;
  }
  return [lift, tiltX, tiltY];
}

/**
 * The rigid motions that cost no energy: the null space of `N^T K N` for lift and tilts N, since a held edge or a
 * foundation makes every motion it opposes cost some.
 *
 * @param K stiffness of the plate without its supports, in local axes, held dofs as identity rows; in-plane rows, if it has
 *   any, come after the nodes'
 * @param x of the nodes, mm
 * @param toLocal turns a field from global into the local axes of the holds, in place
 */
export function rigidMotion(
  K: BlockMatrix,
  x: Float64Array,
  y: Float64Array,
  toLocal: (field: Float64Array) => void,
): RigidMotion {
  const N = liftAndTilts(x, y, K.n);
  for (const field of N) toLocal(field);
  const KN = N.map((field) => multiply(K, field));
  const energy = Matrix.zeros(3, 3);
  for (let a = 0; a < 3; a++) for (let b = 0; b < 3; b++) energy.set(a, b, dense(N[a], KN[b]));
  let stiffest = 0;
  for (let i = 0; i < K.n; i++) stiffest = Math.max(stiffest, K.value[9 * (K.start[i + 1] - 1)]);

  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(energy, { assumeSymmetric: true });
  const fields: Float64Array[] = [];
  realEigenvalues.forEach((value, mode) => {
    if (value > FREE * stiffest) return;
    const field = new Float64Array(3 * K.n);
    for (let a = 0; a < 3; a++) {
      const share = eigenvectorMatrix.get(a, mode);
      addField(field, share, N[a]);
    }
    fields.push(field);
  });
  return { count: fields.length, fields };
}

/** Adds rigid motions of the given amplitudes to a field, in place. */
export function addMotion({ fields }: RigidMotion, amplitude: ArrayLike<number>, u: Float64Array): void {
  if (fields.length < 3) {
    for (let r = 0; r < fields.length; r++) addField(u, amplitude[r], fields[r]);
    return;
  }
  // A plate on its supports alone, the usual one: all three in one pass.
  const [lift, tiltX, tiltY] = fields;
  const [a, b, c] = [amplitude[0], amplitude[1], amplitude[2]];
  for (let i = 0; i < u.length; i++) u[i] += a * lift[i] + b * tiltX[i] + c * tiltY[i];
}

function addField(u: Float64Array, share: number, field: Float64Array): void {
  for (let i = 0; i < u.length; i++) u[i] += share * field[i];
}

function dense(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
