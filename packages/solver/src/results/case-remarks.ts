import type { HeadModel } from '../model/head-model.ts';
import type { CaseResult } from './head-result.ts';

/** One sentence for each fastener that has let go. */
export function lettingGo(cases: readonly CaseResult[]): string[] {
  return cases.flatMap((solved) =>
    solved.fasteners
      .filter(({ holds }) => !holds)
      .map(({ name }) => `Fastener ${name} lets go in case "${solved.name}".`),
  );
}

/** One sentence when probes come off the board: the linear answer is wrong there, and the sentence says which way. */
export function losingContact({ sites: { probes } }: HeadModel, cases: readonly CaseResult[]): string[] {
  const lost = cases.flatMap((solved) =>
    solved.sites
      .filter(({ contact }) => contact?.board?.minimum === 0)
      .map((site) => ({ site: site.name, case: solved.name })),
  );
  if (lost.length === 0) return [];
  const [{ site, case: name }] = lost;
  const more = lost.length === 1 ? '' : ` and at ${lost.length - 1} more places`;
  const effect = probes.relax
    ? 'they are taken to pull on the head there, which understates the bow'
    : 'they are taken to press on the head with their whole preload all the same, which overstates the bow';
  return [`Probes of site ${site} come off the board in case "${name}"${more}: ${effect}.`];
}
