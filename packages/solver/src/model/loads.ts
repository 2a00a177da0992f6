import { Fault } from '../fault/fault.ts';
import type { Site } from '../layout/site.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { PlateLoad } from '../plate/plate-problem.ts';
import type { HeadModel, LoadCase } from './head-model.ts';

/**
 * Loads of a case: the board-side preload of all its probes pushes each site away from the board (+z), spread over the
 * probe field. Where a device has touched down, floating probes lie between device and board and relieve the head;
 * shouldered ones bear on it and leave it loaded.
 *
 * @throws Fault SCHEMA for a site that is not there
 */
export function caseLoads(model: HeadModel, sites: readonly Site[], index: number): PlateLoad[] {
  const { probes } = model.sites;
  const path = `cases.${index}`;
  const touched = touchedSites(model.cases[index], sites, path);
  const force = probes.count * probes.preload;
  const relieved = (site: Site) => probes.kind !== 'shouldered' && touched.has(site.name);
  return sites
    .filter((site) => !relieved(site))
    .map(({ centre: [x, y], field: [width, height] }) => ({
      over: { rectangle: [width, height], centre: [x, y] },
      force,
    }));
}

function touchedSites({ name, touched = [] }: LoadCase, sites: readonly Site[], path: string): ReadonlySet<string> {
  const names = sites.map((site) => site.name);
  if (touched === 'all') return new Set(names);
  touched.forEach((site, i) => {
    if (names.includes(site)) return;
    throw new Fault(
      'SCHEMA',
      `Case "${name}" touches site "${site}", which the head does not have.${didYouMean(site, names)} Sites are ${names[0]} to ${names[names.length - 1]}.`,
      `${path}.touched.${i}`,
      { value: site, expected: names.slice(0, 50) },
    );
  });
  return new Set(touched);
}
