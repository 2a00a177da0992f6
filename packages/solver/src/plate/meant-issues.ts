import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/** Cost of an issue by how surely it shows that another form of the union was meant. */
const OTHER_KIND = 1000;
const OTHER_KEYS = 10;
const OTHER_VALUE = 1;

/**
 * Issues with unions resolved: for each, those of the form that the writer evidently meant, by its keys. A union whose
 * forms fit equally badly stays one issue. Paths become absolute.
 */
export function meantIssues(issues: readonly Issue[], path: readonly PropertyKey[] = []): Issue[] {
  return issues.flatMap((issue) => {
    const at = [...path, ...issue.path];
    const branch = issue.code === 'invalid_union' ? meantBranch(issue.errors) : null;
    return branch === null ? [{ ...issue, path: at }] : meantIssues(branch, at);
  });
}

function meantBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | null {
  const ranked = branches.map((issues) => ({ issues, cost: costOf(issues) })).sort((a, b) => a.cost - b.cost);
  if (ranked.length === 0 || ranked[0].cost >= OTHER_KIND) return null;
  const tied = ranked.length > 1 && ranked[1].cost === ranked[0].cost && ranked[0].cost >= OTHER_KEYS;
  return tied ? null : ranked[0].issues;
}

function costOf(issues: readonly Issue[]): number {
  const keys = issues.reduce((sum, issue) => sum + keyCost(issue), 0);
  return keys > 0 ? keys : OTHER_VALUE;
}

function keyCost(issue: Issue): number {
  if (issue.path.length > 0) return issue.path.length === 1 && issue.input === undefined ? OTHER_KEYS : 0;
  if (issue.code === 'invalid_union') return Math.min(OTHER_KIND, ...issue.errors.map(costOf));
  if (issue.code === 'unrecognized_keys') return OTHER_KEYS * issue.keys.length;
  return issue.code === 'invalid_type' || issue.code === 'invalid_value' ? OTHER_KIND : 0;
}
