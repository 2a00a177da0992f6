import type { CompiledHead } from '../model/compile.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { PlateGroups } from '../structure/groups.ts';
import { headCase } from './head-case.ts';
import type { CaseResult, CaseStrength } from './head-result.ts';
import { headStrength } from './head-strength.ts';
import { sampleAreas } from './sample-areas.ts';

/**
 * Measures solved cases of a head by their index, each once.
 *
 * @param withStrength also stress, of all cases at once when the first is asked for
 */
export function measuredCases(
  model: HeadModel,
  head: CompiledHead,
  solved: PlateGroups,
  withStrength: boolean,
): (index: number) => CaseResult {
  const [{ meshed }] = solved.groups.values();
  const areas = sampleAreas(
    meshed.mesh,
    meshed.firstArea,
    head.sites.map((site) => site.name),
  );
  let strength: CaseStrength[] | null = null;
  const known: CaseResult[] = [];
  return (i) => {
    if (withStrength) strength ??= strengths(model, head, solved);
    known[i] ??= headCase(head.cases[i], head, solved.cases[i], areas, strength?.[i] ?? null);
    return known[i];
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
