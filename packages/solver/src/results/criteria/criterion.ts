import type { Limits } from '../../model/head-model.ts';
import type { FieldGap } from '../field-gap.ts';
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
  /** Share of the value that its error is at least, whatever two meshes say; 0 if left out. */
  readonly leastError?: number;
  /** The same of the difference of the fields on two meshes; left out where it is no norm of the deflection. */
  apart?(gap: FieldGap): number;
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
  return `${um.toFixed(decimals(um))} um`;
}

/** A limit in words, with no fewer digits than it was given: `35.0 um`, `12.25 um`. */
export function micrometreLimit(limit: number): string {
  const um = limit * 1000;
  const given = String(Number(um.toFixed(6)));
  return `${(given.split('.')[1]?.length ?? 0) > decimals(um) ? given : um.toFixed(decimals(um))} um`;
}

/** Size of the gap between a deflection as it is written and its limit, so that the two add up: `4.6 um` of 39.6 and 35.0. */
export function micrometreMargin(value: number, limit: number): string {
  const [um, most] = [value * 1000, limit * 1000];
  const shown = Math.abs(Number(um.toFixed(decimals(um))) - most);
  const text = shown.toFixed(Math.min(decimals(um), decimals(shown)));
  return Number(text) === 0 ? micrometres(Math.abs(value - limit)) : `${text} um`;
}

/** How far a deflection is from its limit: `3.2 um over`. */
export function micrometreGap(value: number, limit: number): string {
  return `${micrometreMargin(value, limit)} ${value > limit ? 'over' : 'inside'}`;
}

function decimals(um: number): number {
  return Math.abs(um) >= 100 ? 0 : Math.abs(um) >= 10 ? 1 : 2;
}
