import type { SiteResult } from '@flathead/solver';

/** Columns on the contact force left at a site: least, mean, spread, and compression; none when the model does not give the rate of its probes. */
export function contactHeadings(sites: readonly SiteResult[]): string[] {
  return sites.some(({ contact }) => contact !== undefined) ? ['contact, N', 'mean, N', 'spread, N', 'left, mm'] : [];
}

/** Of the end of the probes with the least force; dashes where the model does not give it. */
export function contactCells({ contact }: SiteResult): string[] {
  if (contact === undefined) return [];
  const ends = [contact.board, contact.device].flatMap((end) => (end === null ? [] : [end]));
  if (ends.length === 0) return ['-', '-', '-', '-'];
  const { minimum, mean, spread, compression } = ends.reduce((a, b) => (b.minimum < a.minimum ? b : a));
  return [...[minimum, mean, spread].map((force) => force.toFixed(force < 1 ? 4 : 3)), compression.toFixed(3)];
}
