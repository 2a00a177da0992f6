import type { Factor } from '../linear-algebra/factor.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import type { Meshed } from './meshed.ts';
import { isCoupled } from './sections.ts';
import type { PlateSolution } from './solution.ts';
import { advance, type PlateRequest, type PlateStages } from './stages.ts';

/** A case with the plate it was solved on. */
export interface SolvedCase extends Pick<PlateStages, 'structure' | 'supports'> {
  readonly solution: PlateSolution;
}

/** Cases solved in groups of the same sections and foundations, each group with stages of its own, all on one mesh. */
export interface PlateGroups {
  /** By the key of what they share; at least one. The first made the mesh. */
  readonly groups: ReadonlyMap<string, PlateStages>;
  /** In the order of the problems. */
  readonly cases: readonly SolvedCase[];
  /** Milliseconds by stage, of all groups. */
  readonly timings: Readonly<Record<string, number>>;
}

/**
 * Solves cases that share all shapes: {@link advance} for each group of the same sections and foundations, from the group's
 * own stages before. Mostly there is one group: probes that relax give more, and materials that soften with heat.
 *
 * @throws Fault with the path in the plate problem
 */
export function advanceGroups(previous: PlateGroups | null, request: PlateRequest): PlateGroups {
  const members = new Map<string, number[]>();
  request.problems.forEach((problem, i) => {
    const key = plateKey(problem);
    members.set(key, [...(members.get(key) ?? []), i]);
  });
  const coupled = request.problems.some(isCoupled);
  const groups = new Map<string, PlateStages>();
  const cases: SolvedCase[] = [];
  const timings: Record<string, number> = {};
  let first: PlateStages | null = null;
  for (const [key, indices] of members) {
    const problems = indices.map((i) => request.problems[i]);
    const before = previous?.groups.get(key) ?? null;
    let stages: PlateStages;
    if (first === null) {
      // The mesh may come from any group before, since all of them stood on it.
      const [other = null] = previous?.groups.values() ?? [];
      stages = advance(before ?? other, { ...request, problems, coupled });
      first = stages;
    } else {
      const { meshed, meshKey } = first;
      stages = { ...advance(before, { ...request, problems, coupled, meshed }), meshKey };
    }
    groups.set(key, stages);
    indices.forEach((i, k) => {
      cases[i] = { structure: stages.structure, supports: stages.supports, solution: stages.cases[k] };
    });
    for (const [stage, ms] of Object.entries(stages.timings)) timings[stage] = (timings[stage] ?? 0) + ms;
  }
  return { groups, cases, timings };
}

/** Key of what problems share that are solved with one factor. */
export function plateKey({ section, regions, foundations }: PlateProblem): string {
  return JSON.stringify([section, regions, foundations]);
}

/** The mesh that all groups stand on. */
export function meshedOf({ groups }: PlateGroups): Meshed {
  const [{ meshed }] = groups.values();
  return meshed;
}

/** Factors of all groups. */
export function factorsOf({ groups }: PlateGroups): Factor[] {
  return [...groups.values()].map(({ structure }) => structure.factor);
}
