import type { SiteResult } from '../head-result.ts';
import type { Criterion } from './criterion.ts';

/** Sites whose force is within this of the least share it, and the first of them gives its name: see the bow. */
const TIE = 1e-3;

/** Least force that a probe keeps at either of its ends. */
export const contact: Criterion = {
  criterion: 'contact',
  unit: 'N',
  bound: 'least',
  limit: (limits) => limits.contactForce,
  read: ({ sites }) => {
    const forces = sites.flatMap((site) => {
      const value = leastForce(site);
      return value === null ? [] : [{ value, site: site.name }];
    });
    if (forces.length === 0) return null;
    const value = Math.min(...forces.map((force) => force.value));
    return { value, site: forces.find((force) => force.value <= (1 + TIE) * value)!.site };
  },
  sentence: ({ value, limit, site, case: name }) =>
    `Probes of site ${site} keep ${force(value)} in case "${name}", ${force(Math.abs(value - limit))} ${value < limit ? 'short of' : 'above'} the ${force(limit)} limit.`,
};

/** Least force at either end of the probes of a site, N; null when none is known. */
export function leastForce({ contact }: Pick<SiteResult, 'contact'>): number | null {
  const ends = [contact?.board, contact?.device].flatMap((end) => (end ? [end.minimum] : []));
  return ends.length === 0 ? null : Math.min(...ends);
}

/** A force on one probe in words: `0.021 N`. */
function force(value: number): string {
  return `${value >= 1 ? value.toPrecision(3) : value.toFixed(value === 0 || value >= 0.01 ? 3 : 4)} N`;
}
