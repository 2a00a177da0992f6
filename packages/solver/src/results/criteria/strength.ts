import type { PartStrength } from '../head-result.ts';
import type { Criterion } from './criterion.ts';

/** Least strength over largest stress of body and frame, of those whose strength is known. */
export const strength: Criterion = {
  criterion: 'strength',
  unit: '1',
  bound: 'least',
  // Stress at edges.
  order: 1,
  // Peaks at the edges of holes and fields move from node to node and settle late: two meshes agree by chance.
  leastError: 0.1,
  limit: (limits) => limits.strengthFactor,
  read: (result) => {
    const known = (result.strength?.parts ?? []).filter(hasFactor);
    if (known.length === 0) return null;
    const { factor, near } = known.reduce((a, b) => (b.factor < a.factor ? b : a));
    return { value: factor, site: near };
  },
  sentence: ({ value, limit, site, case: name }) =>
    `The strength is ${value.toPrecision(3)} times the largest stress in case "${name}", near ${site}; at least ${limit} times is asked for.`,
};

function hasFactor(part: PartStrength): part is PartStrength & { readonly factor: number } {
  return part.factor !== null;
}
