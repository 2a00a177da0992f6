import type { CriterionVerdict, HeadModel } from '@flathead/solver';
import type { Solved } from './run-store.ts';

type Kind = CriterionVerdict['criterion'];

/** Criteria that the model gives a limit for and the full answer does not judge, as a material lacks what they need. */
export function unjudged({ model, result, quality }: Pick<Solved, 'model' | 'quality' | 'result'>): Kind[] {
  if (quality === 'live') return [];
  const judged = new Set(result.verdict.criteria.map(({ criterion }) => criterion));
  return asked(model).filter((kind) => !judged.has(kind));
}

function asked({ limits }: HeadModel): Kind[] {
  const given: Readonly<Record<Kind, number | undefined>> = {
    bow: limits.bow,
    flatness: limits.flatness,
    contact: limits.contactForce,
    strength: limits.strengthFactor,
    failureProbability: limits.failureProbability,
    fasteners: limits.fastener,
  };
  return (Object.keys(given) as Kind[]).filter((kind) => given[kind] !== undefined);
}
