import { toGlobal } from '../assembly/holds.ts';
import { addScaled, dotDense } from '../linear-algebra/half-solve.ts';
import { scaledResidual } from '../linear-algebra/residual.ts';
import { backwardEach } from '../linear-algebra/solve.ts';
import { addRow, dotRow } from '../linear-algebra/sparse-row.ts';
import type { Equilibrium, Reactions } from '../supports/equilibrium.ts';
import { reactOneWay } from '../supports/one-way.ts';
import { addMotion } from '../supports/rigid-motion.ts';
import type { Loading } from './loading.ts';
import type { Structure } from './structure.ts';

/** One load case solved. */
export interface PlateSolution {
  /** `[3 * nNodes]` w, thetaX, thetaY of each node in global axes, mm and rad. */
  readonly u: Float64Array;
  /** Force of each support on the plate along +z, N, in the order of the supports. */
  readonly reactions: Float64Array;
  /** Deflection of the plate at each support, mm, likewise. */
  readonly seats: Float64Array;
  /** Supports, by index, that act one way only and have let go. */
  readonly letGo: ReadonlySet<number>;
  /** Sum of the loads along +z, N. */
  readonly load: number;
  /** Scaled residual of the plate without its grounding, under loads and reactions; null when it was not asked for. */
  readonly residual: number | null;
}

/**
 * Deflections of load cases: `u = L^-T (L^-1 f + sum lambda_i L^-1 c_i) + N a`, one backward solve for the
 * whole field, with reactions lambda and rigid motion a from the small system. A seat at height h moves its support by
 * `h - lambda/k`, so deflections at supports count from h in that system.
 */
export function solveCases(
  structure: Structure,
  system: Equilibrium,
  loadings: readonly Loading[],
  withResidual: boolean,
): PlateSolution[] {
  const held = loadings.map((loading) => holdCase(system, loading));
  const fields = backwardEach(
    structure.factor,
    held.map(({ y }) => y),
  );
  return held.map((one, i) => finishCase(structure, system, one, fields[i], withResidual));
}

/** A load case with what its supports do. */
interface HeldCase extends Reactions {
  readonly loading: Loading;
  /** `[3 * nRows]` `L^-1` of loads and reactions. */
  readonly y: Float64Array;
}

function holdCase(system: Equilibrium, loading: Loading): HeldCase {
  const seat = Float64Array.from(
    system.supports,
    ({ half, support: { height = 0 } }) => dotDense(half, loading.half) - height,
  );
  const reactions = reactOneWay(system, seat, loading.resultant);
  const y = loading.half.slice();
  system.supports.forEach(({ half }, i) => {
    addScaled(y, reactions.force[i], half);
  });
  return { loading, y, ...reactions };
}

/** @param u solution without rigid motion; changed in place */
function finishCase(
  { motion, stiffness, norm, holds }: Structure,
  system: Equilibrium,
  { loading, force, motion: amplitude, letGo }: HeldCase,
  u: Float64Array,
  withResidual: boolean,
): PlateSolution {
  addMotion(motion, amplitude, u);
  let residual: number | null = null;
  if (withResidual) {
    const f = loading.f.slice();
    system.supports.forEach(({ support }, i) => {
      addRow(f, force[i], support.row);
    });
    residual = scaledResidual(stiffness, u, f, norm);
  }
  const seats = Float64Array.from(system.supports, ({ support: { row, stiffness, height = 0 } }, i) => {
    if (letGo.has(i)) return dotRow(row, u);
    return stiffness === null ? height : height - force[i] / stiffness;
  });
  toGlobal(holds, u);
  return { u, reactions: force, seats, letGo, load: loading.total, residual };
}
