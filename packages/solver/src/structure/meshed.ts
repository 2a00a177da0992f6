import { coupledOrder, type InPlane, inPlaneOf } from '../assembly/in-plane.ts';
import { blockPattern, type MeshPattern } from '../assembly/pattern.ts';
import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import type { Shape } from '../geometry/shape.ts';
import { graphOf } from '../linear-algebra/graph.ts';
import { order } from '../linear-algebra/order.ts';
import { analyse, type Symbolic } from '../linear-algebra/symbolic.ts';
import { type Locator, locator } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { meshDomain } from '../mesh/mesh-domain.ts';
import { components } from '../mesh/validity.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { type Grading, plateDomain } from './plate-domain.ts';
import { sectionIndex } from './section-index.ts';
import type { Stopwatch } from './stopwatch.ts';

/** A plate as far as its shapes decide: mesh, sparsity, elimination order. Sections, holds and supports may change. */
export interface Meshed {
  readonly mesh: Mesh;
  readonly locator: Locator;
  /** `[nTriangles]` section of each triangle: 0 the base section, r + 1 that of region r. */
  readonly section: Uint32Array;
  /** Region index in `mesh.region` of the first measured area. */
  readonly firstArea: number;
  /** Ring of a shape of the problem, its arcs as fine as the elements. */
  readonly ring: (shape: Shape, path: string) => Ring;
  readonly pattern: MeshPattern;
  /** In-plane unknowns of a plate that stretches where it bends; `null` for one that doesn't. */
  readonly inPlane: InPlane | null;
  readonly symbolic: Symbolic;
}

/**
 * Meshes a plate problem and analyses the sparsity of its stiffness.
 *
 * @param areas rings the mesh follows so that results over them are exact
 * @param coarsening multiplies every element size
 * @param isCoupled whether it stretches where it bends
 * @param grading element sizes instead of those that follow from the problem
 * @throws Fault BAD_SHAPE, MESH, TOO_LARGE or DISCONNECTED with the path in the problem
 */
export function meshPlate(
  problem: PlateProblem,
  areas: readonly Ring[],
  coarsening: number,
  clock: Stopwatch,
  isCoupled = false,
  grading?: Grading,
): Meshed {
  const domain = plateDomain(problem, areas, coarsening, grading);
  const mesh = meshDomain(domain.mesh, domain.size);
  requireOnePiece(mesh);
  const places = { locator: locator(mesh), section: sectionIndex(mesh, domain.regions) };
  clock.lap('mesh');
  const pattern = blockPattern(mesh);
  const inPlane = isCoupled ? inPlaneOf(mesh, pattern) : null;
  const nodes = order(graphOf(pattern), mesh.x, mesh.y);
  const symbolic = inPlane === null ? analyse(pattern, nodes) : analyse(inPlane.pattern, coupledOrder(nodes, inPlane));
  clock.lap('ordering');
  return {
    mesh,
    ...places,
    firstArea: domain.regions.length + 1,
    ring: domain.ring,
    pattern,
    inPlane,
    symbolic,
  };
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
