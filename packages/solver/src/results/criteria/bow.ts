import { type Criterion, micrometreGap, micrometreLimit, micrometres } from './criterion.ts';

/** Largest deviation of the site area from the fastener plane. */
export const bow: Criterion = {
  criterion: 'bow',
  unit: 'mm',
  bound: 'most',
  limit: (limits) => limits.bow,
  read: (result) => ({ value: Math.abs(result.bow.value), site: result.bow.site }),
  apart: (gap) => gap.bow,
  sentence: ({ value, limit, site, case: name }) =>
    `Site ${site} bows ${micrometres(value)} in case "${name}", ${micrometreGap(value, limit)} the ${micrometreLimit(limit)} limit.`,
};
