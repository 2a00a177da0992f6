import type { HeadResult } from '@flathead/solver';

/** Largest magnitude of the bow over all load cases, mm: one scale of colours for all of them. */
export function largestBow({ cases }: HeadResult): number {
  return cases.reduce((largest, { bow }) => Math.max(largest, Math.abs(bow.value)), 0);
}
