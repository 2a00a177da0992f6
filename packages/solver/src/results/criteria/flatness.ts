import { type Criterion, micrometreGap, micrometreLimit, micrometres } from './criterion.ts';

/** Minimum-zone flatness of the site area; the site named is the least flat by itself. */
export const flatness: Criterion = {
  criterion: 'flatness',
  unit: 'mm',
  bound: 'most',
  limit: (limits) => limits.flatness,
  read: (result) => ({
    value: result.flatness.minimumZone,
    site: result.sites.reduce((worst, site) => (site.flatness > worst.flatness ? site : worst)).name,
  }),
  apart: (gap) => gap.flatness,
  sentence: ({ value, limit, site, case: name }) =>
    `The site area is flat within ${micrometres(value)} in case "${name}", ${micrometreGap(value, limit)} the ${micrometreLimit(limit)} limit; site ${site} is the least flat.`,
};
