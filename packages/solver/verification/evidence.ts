import type { Basis } from './check.ts';

/** Where a number comes from and how close the solver must come to it. */
export interface Evidence {
  readonly source: string;
  readonly basis: Basis;
  /** How close and why, where the usual tolerance of the quantity is not right. */
  readonly accepted?: Acceptance;
}

export interface Acceptance {
  readonly tolerance: number;
  readonly why: string;
}

/** Read in the source. */
export const published = (source: string, accepted?: Acceptance): Evidence => given(source, 'published', accepted);
/** Recalled from the source: never tested tighter than 1 %. */
export const memory = (source: string, accepted: Acceptance = recalled): Evidence => given(source, 'memory', accepted);
/** Computed independently of the solver by the method named. */
export const derived = (source: string, accepted?: Acceptance): Evidence => given(source, 'derived', accepted);

function given(source: string, basis: Basis, accepted: Acceptance | undefined): Evidence {
  return { source, basis, ...(accepted === undefined ? {} : { accepted }) };
}

/** Of deflections and reactions. */
export const deflections: Acceptance = {
  tolerance: 0.005,
  why: 'deflections converge with h^2: 0.5 % on some 5000 nodes, corners and points of support included',
};
export const moments: Acceptance = { tolerance: 0.02, why: 'moments converge with h: 2 % on some 5000 nodes' };
const recalled: Acceptance = { tolerance: 0.01, why: 'recalled from the source, not read again: 1 %' };
export const beams: Acceptance = {
  tolerance: 0.002,
  why: 'a beam of cubic elements is exact at its nodes: 0.2 % for the width of the strip',
};
export const exact: Acceptance = { tolerance: 1e-6, why: 'the elements hold the exact answer: rounding only' };
export const rounding: Acceptance = { tolerance: 1e-9, why: 'closed form on both sides: rounding only' };
export const printed = (tolerance: number): Acceptance => ({ tolerance, why: 'digits printed in the source' });

/** The book most quoted here. */
export const tables = 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells';
