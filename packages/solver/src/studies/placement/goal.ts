import type { Limits, Probes } from '../../model/head-model.ts';

/** What a search makes small, and what it must keep to. */
export interface Goal {
  readonly objective: 'bow' | 'flatness' | 'share' | 'rms';
  /** What one mm of bow counts; 0 where it doesn't. */
  readonly bow: number;
  /** What one mm of minimum-zone flatness counts; 0 where it doesn't. */
  readonly flatness: number;
  /** Kept to by every placement that can. */
  readonly limits: Pick<Limits, 'fastener' | 'contactForce'>;
  /** `null` on a plate problem. */
  readonly probes: Probes | null;
}

/** Value of a placement that breaks a limit by nothing: above that of any that keeps to them. */
export const BROKEN = 1e6;

/** What a placement gives, over all its load cases. Lengths mm. */
export interface Reading {
  /** What the search compares; from {@link BROKEN} up when a limit is broken, infinite when nothing holds. */
  readonly value: number;
  readonly bow: number;
  readonly flatness: number;
  /** Root mean square of the deflection about its mean; 0 where not asked for. */
  readonly rms: number;
  /** Load case that decides the value. */
  readonly case: string;
  /** Most that a limit is used, as a share of it; 0 without limits. Above 1 one is broken. */
  readonly used: number;
}
