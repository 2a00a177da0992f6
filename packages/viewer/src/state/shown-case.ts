import type { CaseResult, HeadResult } from '@flathead/solver';

/** The case that the stage shows: the chosen one if the answer has it, else the one with the largest bow. */
export function shownCase({ cases }: HeadResult, caseName: string | null): CaseResult {
  return (
    cases.find(({ name }) => name === caseName) ??
    cases.reduce((worst, other) => (Math.abs(other.bow.value) > Math.abs(worst.bow.value) ? other : worst))
  );
}
