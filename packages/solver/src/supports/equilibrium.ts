import { LuDecomposition, Matrix } from 'ml-matrix';
import { Fault } from '../fault/fault.ts';
import { complianceMatrix, type SupportSolve } from './compliance.ts';
import { requireHeld } from './mechanism.ts';

/** The small dense system that supports and free rigid motions obey, factorised once for all load cases. */
export interface Equilibrium {
  readonly supports: readonly SupportSolve[];
  /** `G = C K^-1 C^T` without the springs of the supports, `[m * m]` row-major, mm/N. */
  readonly compliance: Float64Array;
  /** Row scale of each support, then one common scale for each rigid motion, `[m + r]`. */
  readonly scale: Float64Array;
  /** `null` when there is nothing to solve for. */
  readonly lu: LuDecomposition | null;
}

/** What the system answers for one load case. */
export interface Reactions {
  /** Force of each support on the plate along +z, N, `[m]`. */
  readonly force: Float64Array;
  /** Supports, by index, that act one way only and have let go; the plate is clear of them. */
  readonly letGo: ReadonlySet<number>;
  /** Amplitude of each free rigid motion on top of the grounded answer, mm, `[r]`. */
  readonly motion: Float64Array;
}

const NONE: ReadonlySet<number> = new Set();

/** Pivot of the scaled system under which two supports count as one. */
const DISTINCT = 1e-13;

/**
 * Sets up `[G + 1/k, C N; (C N)^T, 0] [lambda; a] = [-C u_f; -N^T f]`: each support moves by `-lambda/k` (a rigid one
 * not at all), and loads and reactions balance in every free rigid motion.
 *
 * @param free number r of free rigid motions
 * @param compliance G of the supports, where it is already known
 * @throws Fault MECHANISM when the supports leave a rigid motion free, or when rigid supports stand in one place
 */
export function equilibrium(
  supports: readonly SupportSolve[],
  free: number,
  compliance: Float64Array = complianceMatrix(supports),
): Equilibrium {
  requireHeld(supports, free);
  const m = supports.length;
  const scale = new Float64Array(m + free);
  if (m + free === 0) return { supports, compliance, scale, lu: null };

  const G = compliance.slice();
  let stiffest = 0;
  for (let i = 0; i < m; i++) {
    const k = supports[i].support.stiffness;
    if (k !== null) G[i * m + i] += 1 / k;
    scale[i] = 1 / Math.sqrt(G[i * m + i]);
    stiffest = Math.max(stiffest, scale[i]);
  }
  scale.fill(1 / stiffest, m);

  // S A S with unit diagonal: millimetres per newton and motions of order one meet on equal terms.
  const A = Matrix.zeros(m + free, m + free);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) A.set(i, j, scale[i] * G[i * m + j] * scale[j]);
    for (let r = 0; r < free; r++) {
      const grip = scale[i] * supports[i].motion[r] * scale[m + r];
      A.set(i, m + r, grip);
      A.set(m + r, i, grip);
    }
  }
  const lu = new LuDecomposition(A);
  if (lu.upperTriangularMatrix.diagonal().some((pivot) => Math.abs(pivot) < DISTINCT))
    throw new Fault(
      'MECHANISM',
      'Two rigid supports act on the same place, so their shares of the reaction are undetermined. Remove one of them, move them apart, or give them a stiffness.',
      'supports',
      { supports: supports.map((solve) => solve.support.name) },
    );
  return { supports, compliance, scale, lu };
}

/**
 * Reactions and rigid motion for one load case.
 *
 * @param seat `C u_f`: deflection of each support of the grounded plate under the load alone, mm, `[m]`
 * @param resultant `N^T f`: resultant of the load in each free rigid motion, `[r]`
 */
export function react({ supports, scale, lu }: Equilibrium, seat: Float64Array, resultant: Float64Array): Reactions {
  const m = supports.length;
  if (lu === null) return { force: new Float64Array(0), motion: new Float64Array(0), letGo: NONE };
  const given = [...seat, ...resultant];
  const x = lu.solve(Matrix.columnVector(given.map((value, i) => -scale[i] * value)));
  const unscaled = Float64Array.from(scale, (s, i) => s * x.get(i, 0));
  return { force: unscaled.subarray(0, m), motion: unscaled.subarray(m), letGo: NONE };
}
