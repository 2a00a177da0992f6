import type { PartStrength } from '../head-result.ts';
import type { Criterion } from './criterion.ts';

/** Largest probability that a ceramic part breaks. */
export const failureProbability: Criterion = {
  criterion: 'failureProbability',
  unit: '1',
  bound: 'most',
  order: 1,
  // It goes with a power of the stress, about the tenth: a few per cent of stress.
  leastError: 0.5,
  limit: (limits) => limits.failureProbability,
  read: (result) => {
    const known = (result.strength?.parts ?? []).filter(hasProbability);
    if (known.length === 0) return null;
    const { failureProbability: value, near } = known.reduce((a, b) =>
      b.failureProbability > a.failureProbability ? b : a,
    );
    return { value, site: near };
  },
  sentence: ({ value, limit, site, case: name }) =>
    `The ceramic breaks with a probability of ${value.toExponential(1)} in case "${name}", most likely near ${site}; at most ${limit.toExponential(1)} is asked for.`,
};

function hasProbability(part: PartStrength): part is PartStrength & { readonly failureProbability: number } {
  return part.failureProbability !== null;
}
