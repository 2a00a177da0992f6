import { foundationOver } from '../assembly/foundation.ts';
import { type Holds, holdsOf, toLocal } from '../assembly/holds.ts';
import { blockPattern } from '../assembly/pattern.ts';
import { assembleStiffness } from '../assembly/stiffness.ts';
import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import type { Shape } from '../geometry/shape.ts';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import { fastestKernel } from '../linear-algebra/compiled-kernel.ts';
import { type Factor, factorise } from '../linear-algebra/factor.ts';
import { graphOf } from '../linear-algebra/graph.ts';
import { order } from '../linear-algebra/order.ts';
import { analyse } from '../linear-algebra/symbolic.ts';

import { type Locator, locator } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { meshDomain } from '../mesh/mesh-domain.ts';
import { components } from '../mesh/validity.ts';
import type { PlateProblem, Theory } from '../plate/plate-problem.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { rigidityOf } from '../section/rigidity-of.ts';
import { grounded, grounding } from '../supports/grounding.ts';
import { type RigidMotion, rigidMotion } from '../supports/rigid-motion.ts';
import { plateDomain } from './plate-domain.ts';
import { sectionIndex } from './section-index.ts';
import type { Stopwatch } from './stopwatch.ts';

/** A plate without its supports and loads: meshed, assembled, grounded and factorised. Frozen; many cases share it. */
export interface Structure {
  readonly mesh: Mesh;
  readonly locator: Locator;
  readonly theory: Theory;
  /** Section of each triangle, an index into {@link rigidities}. */
  readonly section: Uint32Array;
  readonly rigidities: readonly Rigidity[];
  /** Region index in `mesh.region` of the first measured area. */
  readonly firstArea: number;
  readonly holds: Holds;
  /** Ring of a shape of the problem, its arcs as fine as the elements. */
  readonly ring: (shape: Shape, path: string) => Ring;
  /** K of the plate without grounding, local axes of the holds. */
  readonly stiffness: BlockMatrix;
  readonly motion: RigidMotion;
  /** L of the grounded K. */
  readonly factor: Factor;
}

/**
 * Meshes, assembles, grounds and factorises the plate of a problem. Its supports and loads only grade the mesh.
 *
 * @param areas rings the mesh follows so that results over them are exact
 * @param coarsening multiplies every element size
 * @param given solve on this mesh instead, made earlier from the same shapes
 * @throws Fault BAD_SHAPE, MESH, TOO_LARGE, DISCONNECTED, NOT_DEFINITE or NOT_YET with the path in the problem
 */
export function buildStructure(
  problem: PlateProblem,
  areas: readonly Ring[],
  coarsening: number,
  given: Mesh | undefined,
  clock: Stopwatch,
): Structure {
  const theory = problem.theory ?? 'thin';
  const domain = plateDomain(problem, areas, coarsening);
  const mesh = given ?? meshDomain(domain.mesh, domain.size);
  requireOnePiece(mesh);
  clock.lap('mesh');

  const section = sectionIndex(mesh, domain.regions);
  const rigidities = [problem.section, ...(problem.regions ?? []).map((region) => region.section)].map((given, i) =>
    rigidityOf(given, i === 0 ? 'section' : `regions.${i - 1}.section`),
  );
  const locate = locator(mesh);
  const holds = holdsOf(mesh, problem.edges ?? []);
  const foundations = (problem.foundations ?? []).map(({ over, modulus }, i) => {
    const path = `foundations.${i}.over`;
    return foundationOver(mesh, locate, over === 'all' ? over : domain.ring(over, path), modulus, path);
  });
  const pattern = blockPattern(mesh);
  const stiffness = assembleStiffness({ ...mesh, region: section }, pattern, rigidities, theory, foundations, holds);
  clock.lap('assembly');

  const motion = rigidMotion(stiffness, mesh.x, mesh.y, (field) => toLocal(holds, field));
  const permutation = order(graphOf(pattern), mesh.x, mesh.y);
  const symbolic = analyse(pattern, permutation);
  clock.lap('ordering');
  const factor = factorise(symbolic, grounded(stiffness, grounding(stiffness, motion)), fastestKernel());
  clock.lap('factor');
  const firstArea = domain.regions.length + 1;
  const { ring } = domain;
  return { mesh, locator: locate, theory, section, rigidities, firstArea, holds, ring, stiffness, motion, factor };
}

function requireOnePiece(mesh: Mesh): void {
  const { count, label } = components(mesh);
  if (count === 1) return;
  const stray = label.findIndex((part) => part !== label[0]);
  throw new Fault(
    'DISCONNECTED',
    `The plate falls into ${count} parts that are not joined; one of them is at (${mesh.x[stray].toFixed(2)}, ${mesh.y[stray].toFixed(2)}) mm. Let the parts overlap or touch along an edge, or model them one by one.`,
    'outline',
    { parts: count },
  );
}
