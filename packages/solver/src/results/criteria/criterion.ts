import type { Limits } from '../../model/head-model.ts';
import type { CaseResult, CriterionVerdict } from '../head-result.ts';

/** What one load case says of a criterion, and the site or fastener where it is worst. */
export interface Reading {
  readonly value: number;
  readonly site: string;
  readonly mode?: CriterionVerdict['mode'];
}

/** One thing a head is judged by. */
export interface Criterion extends Pick<CriterionVerdict, 'criterion' | 'unit' | 'bound'> {
  /** `undefined` where the model asks for none. */
  limit(limits: Limits): number | undefined;
  /** `null` where the case says nothing of it. */
  read(result: CaseResult): Reading | null;
  /** Order at which it converges with the element size; that of deflections if left out. */
  readonly order?: number;
  /** The judgement in plain words, one sentence. */
  sentence(verdict: CriterionVerdict): string;
}

/** Share of its limit that a value uses up: above 1 it is broken, whichever way the limit bounds. */
export function usedShare({ value, limit, bound }: Pick<CriterionVerdict, 'value' | 'limit' | 'bound'>): number {
  return bound === 'most' ? value / limit : limit / value;
}

/** A deflection in words: `47.3 um`. */
export function micrometres(value: number): string {
  const um = value * 1000;
  const size = Math.abs(um);
  return `${um.toFixed(size >= 100 ? 0 : size >= 10 ? 1 : 2)} um`;
}

/** How far a deflection is from its limit: `3.20 um over`. */
export function micrometreGap(value: number, limit: number): string {
  return value > limit ? `${micrometres(value - limit)} over` : `${micrometres(limit - value)} inside`;
}
