import type { HeadModel } from './head-model.ts';

/** What to know of a head whose probe holes are counterbored: one sentence, or none. */
export function drilledRemarks({ sites }: HeadModel): string[] {
  if (sites.probes.holes?.counterbore === undefined) return [];
  return [
    'The counterbored probe fields are an estimate: each bends about a neutral plane of its own, as if the body around it did not hold that back, which errs on the side of more bow.',
  ];
}
