import { Fault } from '../../fault/fault.ts';
import { equilibrium } from '../../supports/equilibrium.ts';
import { reactOneWay } from '../../supports/one-way.ts';
import { factoriseSmall, solveSmall } from './small-system.ts';
import type { Stand } from './stand.ts';

/** Pivot of the scaled system under which a placement does not hold the plate. */
const HELD = 1e-10;
/** Share of the largest force below which a wrong sign is rounding. */
const ROUNDING = 1e-9;

/** Forces of one placement in one load case. */
export interface CaseForces {
  /** `[m]` force of each support of the placement on the plate along +z, N; room for more. */
  force: Float64Array;
  /** `[r]` amplitudes of the free rigid motions. */
  motion: Float64Array;
  /** Supports of the placement that have let go; `null` when all hold. */
  letGo: ReadonlySet<number> | null;
}

/** Reactions of placements on one stand, in arrays that are used again and again. */
export interface Reactor {
  /** Columns of the placement solved last: those that always hold, then the chosen. */
  readonly active: Uint32Array;
  /** How many. */
  count: number;
  /** One for each load case. */
  readonly cases: readonly CaseForces[];
  /** Solves all load cases; false when the placement leaves the plate free to move or it lifts off. */
  solve(chosen: ArrayLike<number>): boolean;
}

/**
 * Sets up `[G + 1/k, C N; (C N)^T, 0]` of a placement from known compliances and solves it for all load cases.
 *
 * Supports that act one way are first taken to act both ways; where a force then has the wrong sense the complementary
 * problem of {@link reactOneWay} is solved, so that the answer is the true one for every placement.
 *
 * @param most supports that a placement may have
 */
export function reactorOf({ ground, columns, compliance, always }: Stand, most: number): Reactor {
  const r = ground.structure.motion.count;
  const room = always + most + r;
  const A = new Float64Array(room * room);
  const b = new Float64Array(room);
  const scale = new Float64Array(room);
  const pivot = new Uint32Array(room);
  const soft = Float64Array.from(columns, ({ solve: { support } }) =>
    support.stiffness === null ? 0 : 1 / support.stiffness,
  );
  const sense = Int8Array.from(columns, ({ solve: { support } }) =>
    support.acts === 'pull' ? -1 : support.acts === 'push' ? 1 : 0,
  );
  const isOneWay = sense.some((s) => s !== 0);
  const grip = columns.map(({ solve }) => solve.motion);
  const active = new Uint32Array(room);
  for (let i = 0; i < always; i++) active[i] = i;
  const cases = ground.cases.map(
    (): CaseForces => ({ force: new Float64Array(room), motion: new Float64Array(r), letGo: null }),
  );
  const reactor: Reactor = { active, count: always, cases, solve };
  return reactor;

  function solve(chosen: ArrayLike<number>): boolean {
    const m = always + chosen.length;
    const n = m + r;
    reactor.count = m;
    for (let i = always; i < m; i++) active[i] = chosen[i - always];
    let stiffest = 0;
    for (let i = 0; i < m; i++) {
      const c = active[i];
      scale[i] = 1 / Math.sqrt(compliance[c][c] + soft[c]);
      stiffest = Math.max(stiffest, scale[i]);
    }
    for (let i = m; i < n; i++) scale[i] = 1 / stiffest;
    for (let i = 0; i < m; i++) {
      const row = compliance[active[i]];
      for (let j = 0; j < m; j++) A[i * n + j] = scale[i] * row[active[j]] * scale[j];
      A[i * n + i] += scale[i] * soft[active[i]] * scale[i];
      for (let k = 0; k < r; k++) {
        const share = scale[i] * grip[active[i]][k] * scale[m + k];
        A[i * n + m + k] = share;
        A[(m + k) * n + i] = share;
      }
    }
    for (let i = m; i < n; i++) for (let j = m; j < n; j++) A[i * n + j] = 0;
    if (!factoriseSmall(A, n, pivot, HELD)) return false;
    for (let k = 0; k < cases.length; k++) {
      const { resultant } = ground.cases[k].loading;
      for (let i = 0; i < m; i++) b[i] = -scale[i] * columns[active[i]].seat[k];
      for (let i = 0; i < r; i++) b[m + i] = -scale[m + i] * resultant[i];
      solveSmall(A, n, pivot, b);
      const { force, motion: amplitude } = cases[k];
      for (let i = 0; i < m; i++) force[i] = scale[i] * b[i];
      for (let i = 0; i < r; i++) amplitude[i] = scale[m + i] * b[m + i];
      cases[k].letGo = null;
      if (isOneWay && !hasSense(force, m) && !letGo(k, m)) return false;
    }
    return true;
  }

  function hasSense(force: Float64Array, m: number): boolean {
    let largest = 0;
    for (let i = 0; i < m; i++) largest = Math.max(largest, Math.abs(force[i]));
    for (let i = 0; i < m; i++) if (sense[active[i]] * force[i] < -ROUNDING * largest) return false;
    return true;
  }

  /** The complementary problem of case k; false when the plate lifts off. */
  function letGo(k: number, m: number): boolean {
    const supports = Array.from(active.subarray(0, m), (c) => columns[c].solve);
    const G = new Float64Array(m * m);
    for (let i = 0; i < m; i++) for (let j = 0; j < m; j++) G[i * m + j] = compliance[active[i]][active[j]];
    const seat = Float64Array.from(active.subarray(0, m), (c) => columns[c].seat[k]);
    try {
      const answer = reactOneWay(equilibrium(supports, r, G), seat, ground.cases[k].loading.resultant);
      cases[k].force.set(answer.force);
      cases[k].motion.set(answer.motion);
      cases[k].letGo = answer.letGo;
      return true;
    } catch (thrown) {
      if (thrown instanceof Fault && thrown.code === 'MECHANISM') return false;
      throw thrown;
    }
  }
}
