import { pointRow } from './assembly/rows.ts';
import { shapeRing } from './geometry/ring.ts';
import { dotRow } from './linear-algebra/sparse-row.ts';
import type { Mesh } from './mesh/mesh.ts';
import type { PlateProblem } from './plate/plate-problem.ts';
import { checkPlateProblem } from './plate/validate.ts';
import { bestFitPlane } from './results/best-fit-plane.ts';
import { extremeDeviations } from './results/bow.ts';
import { flatness } from './results/flatness.ts';
import { momentsAt, nodalMoments } from './results/moments.ts';
import type { PlateField } from './results/plate-result.ts';
import { sampleAreas } from './results/sample-areas.ts';
import { COARSENING, twoMeshError } from './results/two-mesh.ts';
import { freeStrainsOf } from './structure/sections.ts';
import { advance, type PlateStages } from './structure/stages.ts';
import { type Structure, unknownsOf } from './structure/structure.ts';

/** Rounds of refinement towards `mesh.tolerance`, each of which is one more solve on two meshes. */
const ROUNDS = 4;

/** Sagitta of a polygonised arc of the reported shape, mm. */
const AREA_CHORD = 0.005;

const BOARD = { a: 0, bx: 0, by: 0 };

/**
 * From a plate problem to deflections, moments and reactions, with the error of the largest deflection.
 *
 * With `mesh.tolerance` the mesh is refined until the estimated error is below it; an answer that is still above after
 * {@link ROUNDS} rounds carries its larger estimate.
 *
 * @throws Fault with the path in the problem for anything that can't be solved as asked
 */
export function solvePlate(problem: PlateProblem): PlateField {
  const started = performance.now();
  checkPlateProblem(problem);
  const tolerance = problem.mesh !== undefined && 'tolerance' in problem.mesh ? problem.mesh.tolerance : Infinity;
  const over = problem.report?.over;
  const areas = over === undefined ? [] : [shapeRing(over, { chord: AREA_CHORD, path: 'report.over' })];
  const request = { problems: [problem], areas, keepMesh: false };
  for (let round = 1, refinement = 1; ; round++) {
    const stages = advance(null, { ...request, coarsening: refinement });
    const coarse = advance(null, { ...request, coarsening: refinement * COARSENING });
    const w = largest(stages);
    const max = twoMeshError(w, largest(coarse));
    const error = { max, estimate: w === 0 ? 0 : max / w };
    if (error.estimate <= tolerance || round === ROUNDS) {
      const timings = { ...stages.timings, total: performance.now() - started };
      return { ...measure(problem, stages), error, timings };
    }
    // The error falls with the square of the element size; aim a little below the tolerance.
    refinement *= Math.max(0.4, Math.min(0.8, 0.9 * Math.sqrt(tolerance / error.estimate)));
  }
}

/** Largest |w| anywhere on the plate, mm. */
function largest({ structure, cases }: PlateStages): number {
  const { min, max } = deflections(structure.mesh, cases[0].u);
  return Math.max(Math.abs(min.value), Math.abs(max.value));
}

function measure(problem: PlateProblem, { structure, cases }: PlateStages): Omit<PlateField, 'error' | 'timings'> {
  const { mesh, locator, rigidities, theory, section } = structure;
  const [{ u, reactions, load, residual }] = cases;
  const at = problem.report?.at ?? [];
  const moments = nodalMoments({ ...mesh, region: section }, rigidities, theory, u, freeStrainsOf(problem));
  const points = problem.report?.over === undefined ? new Float64Array(0) : reported(structure, u);
  return {
    w: {
      ...deflections(mesh, u),
      at: at.map((point, i) => dotRow(pointRow(mesh, locator, point, `report.at.${i}`), u)),
    },
    moments: { at: at.map((point, i) => momentsAt(mesh, locator, moments, point, `report.at.${i}`)) },
    reactions: [...reactions],
    flatness: points.length === 0 ? null : flatness(points),
    bestFitPlane: points.length === 0 ? null : bestFitPlane(points),
    mesh: { nodes: mesh.x.length, elements: mesh.region.length, minAngle: mesh.minAngle },
    dofs: unknownsOf(structure),
    load,
    residual: residual ?? 0,
    fields: { mesh, u },
  };
}

function deflections(mesh: Mesh, u: Float64Array) {
  return extremeDeviations(mesh, u, BOARD, Uint32Array.from(mesh.region.keys()));
}

/** Nodes of the reported area as x, y, w, `[3 * n]`. */
function reported({ mesh, firstArea }: Structure, u: Float64Array): Float64Array {
  const [{ nodes }] = sampleAreas(mesh, firstArea, ['report.over']);
  return Float64Array.from({ length: 3 * nodes.length }, (_, k) => {
    const node = nodes[Math.floor(k / 3)];
    return [mesh.x[node], mesh.y[node], u[3 * node]][k % 3];
  });
}
