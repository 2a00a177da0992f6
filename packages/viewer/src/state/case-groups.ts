import type { CaseResult } from '@flathead/solver';

/** Cases that stand together: one of the model, or all that were enumerated for one. */
export interface CaseGroup {
  /** Name of the case of the model. */
  readonly name: string;
  /** Largest bow first where there are several. */
  readonly cases: readonly CaseResult[];
}

/** Cases by the case of the model that they come from, in the order of the model. */
export function caseGroups(cases: readonly CaseResult[]): CaseGroup[] {
  const groups = new Map<string, CaseResult[]>();
  for (const result of cases) {
    const name = result.family ?? result.name;
    groups.set(name, [...(groups.get(name) ?? []), result]);
  }
  return [...groups].map(([name, members]) => ({
    name,
    cases: members.toSorted((a, b) => Math.abs(b.bow.value) - Math.abs(a.bow.value)),
  }));
}
