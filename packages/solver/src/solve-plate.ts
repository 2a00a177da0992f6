import { pointRow } from './assembly/rows.ts';
import { shapeRing } from './geometry/ring.ts';
import { dotRow } from './linear-algebra/sparse-row.ts';
import type { Mesh } from './mesh/mesh.ts';
import type { PlateProblem } from './plate/plate-problem.ts';
import { checkPlateProblem } from './plate/validate.ts';
import { areaPoints } from './results/area-points.ts';
import { bestFitPlane } from './results/best-fit-plane.ts';
import { extremeDeviations } from './results/bow.ts';
import { flatness } from './results/flatness.ts';
import { type Moments, momentsAt, nodalMoments } from './results/moments.ts';
import { peaks } from './results/peaks.ts';
import type { FieldValue, PlateField } from './results/plate-result.ts';
import { refineFor } from './results/refine-for.ts';
import { sampleAreas } from './results/sample-areas.ts';
import { COARSENING, MOMENT_ORDER, twoMeshError } from './results/two-mesh.ts';
import type { Grading } from './structure/plate-domain.ts';
import { freeStrainsOf } from './structure/sections.ts';
import { advance, type PlateStages } from './structure/stages.ts';
import { unknownsOf } from './structure/structure.ts';

/** Rounds of refinement towards `mesh.tolerance`, each of which is one more solve on two meshes. */
const ROUNDS = 8;
/** Share of the tolerance aimed at, so that most problems meet it without one more round. */
const AIM = 0.7;
/** Least share of an error that one round aims at: an indicator on a coarse mesh is not trusted further. */
const LEAST_RATIO = 0.15;

/** Sagitta of a polygonised arc of the reported shape, mm. */
const AREA_CHORD = 0.005;

const BOARD = { a: 0, bx: 0, by: 0 };

/**
 * From a plate problem to deflections, moments and reactions, with the error of the largest deflection.
 *
 * With `mesh.tolerance` the mesh is refined, where it matters for the largest deflection, until its estimated error is
 * below the tolerance; an answer that is still above after {@link ROUNDS} rounds carries its larger estimate.
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
  let grading: Grading | undefined;
  let isLast = false;
  for (let round = 1; ; round++) {
    const [stages, coarse] = [1, COARSENING].map((coarsening) =>
      advance(null, { ...request, coarsening, ...(grading === undefined ? {} : { grading }) }),
    );
    const w = largest(stages);
    const max = twoMeshError(w.value, largest(coarse).value);
    const estimate = w.value === 0 ? 0 : max / w.value;
    if (estimate <= tolerance || round === ROUNDS || isLast) {
      const measured = measure(problem, stages);
      const error = { max, estimate, ...errorsOf(measured, measure(problem, coarse)) };
      const timings = { ...stages.timings, total: performance.now() - started };
      return { ...measured, error, timings };
    }
    const { mesh, locator } = stages.structure;
    const ratio = Math.max(LEAST_RATIO, (AIM * tolerance) / estimate);
    const size = Float64Array.from(mesh.x, (_, i) => Math.abs(stages.cases[0].u[3 * i]));
    const goals = peaks(mesh, size, w, 2 * estimate).map((at) => ({
      load: 0,
      row: pointRow(mesh, locator, at, 'mesh.tolerance'),
      ratio,
    }));
    ({ grading, isLast } = refineFor([{ ...stages, solution: stages.cases[0] }], goals));
    for (const { structure } of [stages, coarse]) structure.factor.memory.release();
  }
}

/** Largest |w| anywhere on the plate, mm. */
function largest({ structure, cases }: PlateStages): FieldValue {
  const { min, max } = deflections(structure.mesh, cases[0].u);
  return max.value >= -min.value ? max : { ...min, value: -min.value };
}

type Measured = Omit<PlateField, 'error' | 'timings'>;

/** Errors of all that was asked for but the largest deflection. */
function errorsOf(fine: Measured, coarse: Measured): Omit<PlateField['error'], 'max' | 'estimate'> {
  const moment = (i: number, m: keyof Moments) =>
    twoMeshError(fine.moments.at[i][m], coarse.moments.at[i][m], MOMENT_ORDER);
  return {
    at: fine.w.at.map((w, i) => twoMeshError(w, coarse.w.at[i])),
    moments: fine.moments.at.map((_, i) => ({ mxx: moment(i, 'mxx'), myy: moment(i, 'myy'), mxy: moment(i, 'mxy') })),
    reactions: fine.reactions.map((reaction, i) => twoMeshError(reaction, coarse.reactions[i])),
    flatness:
      fine.flatness === null || coarse.flatness === null
        ? null
        : twoMeshError(fine.flatness.minimumZone, coarse.flatness.minimumZone),
  };
}

function measure(problem: PlateProblem, { structure, cases }: PlateStages): Measured {
  const { mesh, locator, rigidities, theory, section } = structure;
  const [{ u, reactions, load, residual }] = cases;
  const at = problem.report?.at ?? [];
  const moments = nodalMoments({ ...mesh, region: section }, rigidities, theory, u, freeStrainsOf(problem));
  const points =
    problem.report?.over === undefined
      ? new Float64Array(0)
      : areaPoints(mesh, u, sampleAreas(mesh, structure.firstArea, ['report.over']));
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
    residual,
    fields: { mesh, u },
  };
}

function deflections(mesh: Mesh, u: Float64Array) {
  return extremeDeviations(mesh, u, BOARD, Uint32Array.from(mesh.region.keys()));
}
