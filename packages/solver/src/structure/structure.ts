import { foundationOver } from '../assembly/foundation.ts';
import { type Holds, holdsOf, toLocal } from '../assembly/holds.ts';
import { assembleStiffness } from '../assembly/stiffness.ts';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import { fastestKernel } from '../linear-algebra/compiled-kernel.ts';
import { type Factor, type FactorOptions, factorise } from '../linear-algebra/factor.ts';
import { rowSumNorm } from '../linear-algebra/residual.ts';
import type { PlateProblem, Theory } from '../plate/plate-problem.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { grounded, grounding } from '../supports/grounding.ts';
import { type RigidMotion, rigidMotion } from '../supports/rigid-motion.ts';
import type { Meshed } from './meshed.ts';
import { rigiditiesOf } from './sections.ts';
import type { Stopwatch } from './stopwatch.ts';

/** A plate without its supports and loads: assembled, grounded and factorised. Many cases share it. */
export interface Structure extends Meshed {
  readonly theory: Theory;
  /** Indexed by {@link Meshed.section}. */
  readonly rigidities: readonly Rigidity[];
  readonly holds: Holds;
  /** K of the plate without grounding, local axes of the holds. */
  readonly stiffness: BlockMatrix;
  /** Maximum norm of that K. */
  readonly norm: number;
  readonly motion: RigidMotion;
  /** L of the grounded K. */
  readonly factor: Factor;
}

/**
 * Assembles, grounds and factorises a meshed plate.
 *
 * @throws Fault NOT_DEFINITE, CANCELLED, OUTSIDE or NOT_YET with the path in the problem
 */
export function buildStructure(
  problem: PlateProblem,
  meshed: Meshed,
  clock: Stopwatch,
  options: FactorOptions = {},
): Structure {
  const { mesh, locator, section, ring, pattern, symbolic } = meshed;
  const theory = problem.theory ?? 'thin';
  const rigidities = rigiditiesOf(problem);
  const holds = holdsOf(mesh, problem.edges ?? []);
  const foundations = (problem.foundations ?? []).map(({ over, modulus }, i) => {
    const path = `foundations.${i}.over`;
    return foundationOver(mesh, locator, over === 'all' ? over : ring(over, path), modulus, path);
  });
  const stiffness = assembleStiffness({ ...mesh, region: section }, pattern, rigidities, theory, foundations, holds);
  clock.lap('assembly');
  const motion = rigidMotion(stiffness, mesh.x, mesh.y, (field) => toLocal(holds, field));
  const K = grounded(stiffness, grounding(stiffness, motion));
  clock.lap('grounding');
  const factor = factorise(symbolic, K, {
    kernel: fastestKernel(),
    ...options,
  });
  clock.lap('factor');
  return { ...meshed, theory, rigidities, holds, stiffness, norm: rowSumNorm(stiffness), motion, factor };
}
