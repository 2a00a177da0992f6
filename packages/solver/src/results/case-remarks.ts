import type { HeadModel } from '../model/head-model.ts';
import { ASSEMBLED } from '../model/heat.ts';
import { bodyMaterial } from '../model/zones.ts';
import { micrometres } from './criteria/criterion.ts';
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

/**
 * One sentence for the hottest or coldest case: screws are taken to let the head slide on the board, and by how much its
 * outermost fastener then moves.
 */
export function slidingOnBoard(model: HeadModel): string[] {
  const rises = model.cases.map(({ name, temperature = ASSEMBLED }) => ({ name, rise: temperature - ASSEMBLED }));
  const most = rises.reduce((a, b) => (Math.abs(b.rise) > Math.abs(a.rise) ? b : a));
  if (most.rise === 0) return [];
  const { expansion = 0 } = bodyMaterial(model);
  const reach = Math.max(...model.fasteners.map(({ at: [x, y] }) => Math.hypot(x, y)));
  return [
    `In case "${most.name}" the head is taken to slide on the board under its screws: the outermost moves by ${micrometres(Math.abs(expansion * most.rise) * reach)} with the body, less what the board moves. Screws that hold it put the body under a stress that is not counted.`,
  ];
}
