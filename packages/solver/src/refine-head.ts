import type { CompiledHead } from './model/compile.ts';
import type { HeadModel } from './model/head-model.ts';
import { headGoals, unsettled } from './results/head-goals.ts';
import { coarseOpinion, measuredCases, siteAreas } from './results/measured-cases.ts';
import { refineFor } from './results/refine-for.ts';
import { COARSENING } from './results/two-mesh.ts';
import { verdictOf } from './results/verdict.ts';
import { advanceGroups, factorsOf, type PlateGroups } from './structure/groups.ts';
import type { PlateRequest } from './structure/stages.ts';

/** Rounds of refinement towards `mesh.tolerance`. */
const ROUNDS = 6;

/** The same cases on a mesh and on one coarser by the ratio of the two-mesh estimate. */
interface TwoMeshes {
  readonly main: PlateGroups;
  readonly coarse: PlateGroups;
}

/**
 * Refines the mesh of a head where it matters, until the errors of bow and flatness are within `mesh.tolerance`; without
 * one the meshes are as they came.
 *
 * @param kept stages whose memory is still wanted
 */
export function* refineHead(
  model: HeadModel,
  head: CompiledHead,
  request: PlateRequest,
  start: TwoMeshes,
  kept: { readonly main: PlateGroups; readonly coarse: PlateGroups | null } | null,
): Generator<string, TwoMeshes, void> {
  const { tolerance } = head.plan;
  let { main, coarse } = start;
  if (tolerance === Infinity) return start;
  const wanted = new Set(
    kept === null ? [] : [kept.main, kept.coarse].flatMap((solved) => solved && factorsOf(solved)),
  );
  for (let round = 1; round <= ROUNDS; round++) {
    const areas = siteAreas(head, main);
    const measured = measuredCases(model, head, main, areas, false);
    const cases = head.cases.map((_, i) => measured(i));
    const coarser = coarseOpinion(model, head, main, cases, areas, coarse, false);
    const { criteria } = verdictOf(model.limits, cases, { coarse: coarser, thin: null }, []);
    const open = unsettled(criteria, tolerance);
    if (open.length === 0) break;
    yield `refine ${round}`;
    const { grading, isLast } = refineFor(main.cases, headGoals(main.cases, cases, areas, open, tolerance));
    for (const factor of [...factorsOf(main), ...factorsOf(coarse)]) if (!wanted.has(factor)) factor.memory.release();
    main = advanceGroups(null, { ...request, grading });
    coarse = advanceGroups(null, { ...request, coarsening: COARSENING, grading });
    if (isLast) break;
  }
  return { main, coarse };
}
