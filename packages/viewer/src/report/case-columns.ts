import type { CaseResult } from '@flathead/solver';
import { caseGroups } from '../state/case-groups.ts';

/** Columns of cases that one table of a page has room for. */
const MOST_CASES = 6;
/** Most cases that leave room for what else is told of each fastener or site. */
export const FEW_CASES = 4;

/** The worst of each case of the model: those over a wafer would fill the report. */
export function worstOfEach(cases: readonly CaseResult[]): CaseResult[] {
  return caseGroups(cases).map(({ cases: members }) => members[0]);
}

/** The same, as many at a time as a table has columns for. */
export function caseChunks(cases: readonly CaseResult[]): CaseResult[][] {
  const parts: CaseResult[][] = [];
  for (let i = 0; i < cases.length; i += MOST_CASES) parts.push(cases.slice(i, i + MOST_CASES));
  return parts;
}
