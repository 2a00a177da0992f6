import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { meshSizeField } from '../mesh/mesh-size-field.ts';
import type { SolvedCase } from '../structure/groups.ts';
import { influence } from '../structure/influence.ts';
import type { Grading } from '../structure/plate-domain.ts';
import { goalIndicator } from './goal-indicator.ts';
import { gradedSizes } from './graded-sizes.ts';

/** Element size grows by at most this much per unit of distance. */
const GROWTH = 0.3;
/** Arcs are cut no finer than this share of the mean element size. */
const FINEST_ARC = 0.1;

/** Nodes that a refined mesh has at most. */
const MOST_NODES = 60_000;

/** A quantity of a solved case that the mesh is refined for. */
export interface Goal {
  /** Index of the case. */
  readonly load: number;
  /** The quantity is `c u`, global axes; only its proportions matter. */
  readonly row: SparseRow;
  /** Error wanted over error now, below 1. */
  readonly ratio: number;
}

export interface Refined {
  readonly grading: Grading;
  /** More would be needed than {@link MOST_NODES}: there is no use in going on. */
  readonly isLast: boolean;
}

/**
 * Element sizes that bring the errors of some quantities down, each by its ratio, with few elements: smaller where the
 * error of the solution and the influence on a quantity meet, larger where they don't.
 *
 * @param cases all on one mesh
 */
export function refineFor(cases: readonly SolvedCase[], goals: readonly Goal[]): Refined {
  const { mesh, locator } = cases[0].structure;
  const nodal = new Float64Array(mesh.x.length).fill(Infinity);
  for (const { load, row, ratio } of goals) {
    const solved = cases[load];
    const eta = goalIndicator(solved.structure, solved.solution.u, influence(solved, solved.solution, row));
    const sizes = gradedSizes(mesh, eta, ratio);
    for (let i = 0; i < nodal.length; i++) nodal[i] = Math.min(nodal[i], sizes[i]);
  }
  const nodes = nodesOf(mesh, nodal);
  const isLast = nodes > MOST_NODES;
  const bounded = isLast ? nodal.map((size) => size * Math.sqrt(nodes / MOST_NODES)) : nodal;
  return { grading: { size: meshSizeField(mesh, locator, bounded, GROWTH), arc: arcEdge(mesh, bounded) }, isLast };
}

/** Nodes that elements of these sizes give: 2 / sqrt(3) / size^2 per area. */
function nodesOf({ x, y, triangles }: Mesh, nodal: Float64Array): number {
  let nodes = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    nodes += (twice * (nodal[a] ** -2 + nodal[b] ** -2 + nodal[c] ** -2)) / (3 * Math.sqrt(3));
  }
  return nodes;
}

/** Least size along the boundary, so that no chord of a held arc is longer than the elements along it. */
function arcEdge({ boundary }: Mesh, nodal: Float64Array): number {
  const mean = nodal.reduce((sum, size) => sum + size, 0) / nodal.length;
  return Math.max(
    FINEST_ARC * mean,
    boundary.reduce((least, node) => Math.min(least, nodal[node]), Infinity),
  );
}
