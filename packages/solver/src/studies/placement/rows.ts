import type { CriterionVerdict, Outcome } from '../../results/head-result.ts';
import type { Placement } from './placement.ts';

/** A placement with what it gives, over all load cases. Lengths mm. */
export interface PlacementPoint {
  /** Complete: opens as a variant of the model. */
  readonly placement: Placement;
  /** By the flexibilities of one mesh that is not graded towards fasteners. */
  readonly bow: number;
  readonly flatness: number;
  /** Load case that decides. */
  readonly case: string;
  /** Whether it keeps to the limits on fastener loads and on contact that the model gives. */
  readonly keepsLimits: boolean;
  /** Least distance from the head of a placed fastener to a probe field, mm. */
  readonly siteGap: number;
  readonly how: SearchReport;
}

/** How a placement was found. */
export interface SearchReport {
  readonly method: 'all' | 'search';
  /** Grid step, mm, and positions on the grid open to a fastener. */
  readonly step: number;
  readonly positions: number;
  /** Placements that keep the spacing, all of them tried; 0 for a search. */
  readonly placements: number;
  /** Starts of a search, and how many of them ended at its best. */
  readonly starts: number;
  readonly again: number;
  /** Whether the best of the grid was then moved off it. */
  readonly continuous: boolean;
}

/** The winner solved like any other head: on a mesh of its own, with its error. */
export interface Verified {
  readonly bow: number;
  readonly flatness: number;
  readonly outcome: Outcome;
  readonly criteria: readonly CriterionVerdict[];
  readonly sentence: string;
  /** Placements solved in full before one passed every criterion that the search does not see. */
  readonly solved: number;
}

/** One point of a trade curve. `best` is `null` where no placement was found, and `refused` says why. */
export interface CurvePoint {
  readonly over: 'clearance' | 'count';
  readonly at: number;
  readonly best: PlacementPoint | null;
  readonly refused: string | null;
}

/** What a placement study says row by row; plain JSON. Every row but progress is worth keeping. */
export type PlacementRow = { readonly index: number } & (
  | {
      readonly kind: 'begin';
      /** Searches to come: one, or one for each point of the curve. */
      readonly total: number;
    }
  | {
      readonly kind: 'progress';
      readonly stage: 'flexibility' | 'search' | 'polish' | 'verify';
      /** Search that it belongs to. */
      readonly task: number;
      /** Share of the stage, 0 to 1; of a polish, which ends when nothing helps, the placements tried. */
      readonly done: number;
    }
  | {
      readonly kind: 'better';
      readonly task: number;
      /** mm, or the share of the limits; from 1e6 up a limit is broken. */
      readonly value: number;
      readonly placement: Placement;
    }
  | ({ readonly kind: 'point'; readonly task: number } & CurvePoint)
);

export interface PlacementSummary {
  readonly objective: 'bow' | 'flatness' | 'share';
  readonly best: PlacementPoint;
  readonly verified: Verified;
  /** Empty without a curve. */
  readonly curve: readonly CurvePoint[];
  /** In plain words, one sentence each: how the best was found, and what the search does not see. */
  readonly remarks: readonly string[];
}
