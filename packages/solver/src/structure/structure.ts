import { assembleCoupled } from '../assembly/coupled-stiffness.ts';
import { foundationOver } from '../assembly/foundation.ts';
import { type Holds, holdsOf, toLocal } from '../assembly/holds.ts';
import { coupledHolds } from '../assembly/in-plane-holds.ts';
import { assembleStiffness } from '../assembly/stiffness.ts';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import { fastestKernel } from '../linear-algebra/compiled-kernel.ts';
import { type Factor, type FactorOptions, factorise } from '../linear-algebra/factor.ts';
import { rowSumNorm } from '../linear-algebra/residual.ts';
import type { PlateProblem, Theory } from '../plate/plate-problem.ts';
import type { Membrane } from '../section/membrane.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { grounded, grounding } from '../supports/grounding.ts';
import { type RigidMotion, rigidMotion } from '../supports/rigid-motion.ts';
import type { Meshed } from './meshed.ts';
import { membranesOf, rigiditiesOf } from './sections.ts';
import type { Stopwatch } from './stopwatch.ts';

/** A plate without its supports and loads: assembled, grounded and factorised. Many cases share it. */
export interface Structure extends Meshed {
  readonly theory: Theory;
  /** Indexed by {@link Meshed.section}. */
  readonly rigidities: readonly Rigidity[];
  /** Likewise; `null` where nothing stretches. */
  readonly membranes: readonly Membrane[] | null;
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
  const { mesh, locator, section, ring, pattern, inPlane, symbolic } = meshed;
  const theory = problem.theory ?? 'thin';
  const rigidities = rigiditiesOf(problem);
  const membranes = inPlane === null ? null : membranesOf(problem);
  const { edges = [] } = problem;
  const plateHolds = holdsOf(mesh, edges);
  const holds = inPlane === null ? plateHolds : coupledHolds(mesh, inPlane, plateHolds, edges);
  const foundations = (problem.foundations ?? []).map(({ over, modulus }, i) => {
    const path = `foundations.${i}.over`;
    return foundationOver(mesh, locator, over === 'all' ? over : ring(over, path), modulus, path);
  });
  const sectioned = { ...mesh, region: section };
  const stiffness =
    inPlane === null || membranes === null
      ? assembleStiffness(sectioned, pattern, rigidities, theory, foundations, holds)
      : assembleCoupled(sectioned, inPlane, rigidities, membranes, theory, foundations, holds);
  clock.lap('assembly');
  const motion = rigidMotion(stiffness, mesh.x, mesh.y, (field) => toLocal(holds, field));
  const K = grounded(stiffness, grounding(stiffness, motion));
  clock.lap('grounding');
  const factor = factorise(symbolic, K, {
    kernel: fastestKernel(),
    ...options,
  });
  clock.lap('factor');
  return { ...meshed, theory, rigidities, membranes, holds, stiffness, norm: rowSumNorm(stiffness), motion, factor };
}

/** Number of unknowns: three for each node, and two for each node and side in the plane where that comes into play. */
export function unknownsOf({ mesh, inPlane }: Pick<Structure, 'mesh' | 'inPlane'>): number {
  const nodes = mesh.x.length;
  return 3 * nodes + (inPlane === null ? 0 : 2 * (inPlane.pattern.n - nodes));
}
