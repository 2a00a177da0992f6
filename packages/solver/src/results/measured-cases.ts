import type { CompiledHead } from '../model/compile.ts';
import type { HeadModel } from '../model/head-model.ts';
import { meshedOf, type PlateGroups } from '../structure/groups.ts';
import { fieldGap } from './field-gap.ts';
import { headCase } from './head-case.ts';
import type { CaseResult, CaseStrength } from './head-result.ts';
import { headStrength } from './head-strength.ts';
import { type SampleArea, sampleAreas } from './sample-areas.ts';
import type { CoarseOpinion } from './verdict.ts';

/**
 * Measures solved cases of a head by their index, each once.
 *
 * @param areas as from {@link siteAreas}
 * @param withStrength also stress, of all cases at once when the first is asked for
 */
export function measuredCases(
  model: HeadModel,
  head: CompiledHead,
  solved: PlateGroups,
  areas: readonly SampleArea[],
  withStrength: boolean,
): (index: number) => CaseResult {
  let strength: CaseStrength[] | null = null;
  const known: CaseResult[] = [];
  return (i) => {
    if (withStrength) strength ??= strengths(model, head, solved);
    known[i] ??= headCase(head.cases[i], head, solved.cases[i], areas, strength?.[i] ?? null);
    return known[i];
  };
}

/** The same cases on a coarser mesh, and how far apart the two are. */
export function coarseOpinion(
  model: HeadModel,
  head: CompiledHead,
  main: Pick<PlateGroups, 'cases'>,
  results: readonly CaseResult[],
  areas: readonly SampleArea[],
  coarse: PlateGroups,
  withStrength: boolean,
): CoarseOpinion {
  const measured = measuredCases(model, head, coarse, siteAreas(head, coarse), withStrength);
  return {
    measured,
    gap: (i) =>
      fieldGap(areas, { solved: main.cases[i], result: results[i] }, { solved: coarse.cases[i], result: measured(i) }),
  };
}

/** Strength in the order of the cases; those on one structure together. */
function strengths(model: HeadModel, head: CompiledHead, { cases }: PlateGroups): CaseStrength[] {
  const all: CaseStrength[] = [];
  for (const structure of new Set(cases.map((solved) => solved.structure))) {
    const indices = cases.flatMap((solved, i) => (solved.structure === structure ? [i] : []));
    const own = indices.map((i) => ({ problem: head.problems[i], solution: cases[i].solution }));
    headStrength(model, head, structure, own).forEach((result, k) => {
      all[indices[k]] = result;
    });
  }
  return all;
}

/** What results of a head are measured on in the mesh that it was solved on, one for each site. */
export function siteAreas(head: CompiledHead, solved: PlateGroups): SampleArea[] {
  const { mesh, firstArea } = meshedOf(solved);
  return sampleAreas(
    mesh,
    firstArea,
    head.sites.map((site) => site.name),
  );
}
