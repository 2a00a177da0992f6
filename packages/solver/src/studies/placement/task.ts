import type { Point } from '../../geometry/point.ts';
import type { Reading } from './goal.ts';
import type { GroupPlan } from './plan.ts';

/** One search: a clearance and how many fasteners. */
export interface Task {
  readonly clearance: number;
  readonly groups: readonly GroupPlan[];
}

/** How all tasks are searched. */
export interface Settings {
  readonly about: Point;
  /** `null` chooses one. */
  readonly step: number | null;
  readonly continuous: boolean;
  readonly spacing: number;
  readonly seed: number;
  readonly starts: number;
  readonly most: number;
}

/** The best that one task found. */
export interface Best {
  readonly points: readonly Point[];
  readonly reading: Reading;
  /** Value on the grid, before it was moved off it; see {@link Reading.value}. */
  readonly gridValue: number;
}

/** What one task found, and how it was searched. */
export interface TaskResult {
  /** Grid step, mm. */
  readonly step: number;
  /** Positions on the grid that keep the clearance. */
  readonly positions: number;
  /** Whether there are positions enough, but the orbits that mirrors make of them do not add up to the counts. */
  readonly isUneven: boolean;
  readonly isExhaustive: boolean;
  /** Placements tried when exhaustive. */
  readonly placements: number;
  readonly starts: number;
  readonly again: number;
  readonly continuous: boolean;
  /** Best first; empty when no placement was found. */
  readonly best: readonly Best[];
}

/** What a run of tasks says on its way. */
export type TaskStep =
  | {
      readonly kind: 'progress';
      readonly stage: 'flexibility' | 'search' | 'polish';
      readonly task: number;
      readonly done: number;
    }
  | { readonly kind: 'better'; readonly task: number; readonly value: number; readonly points: readonly Point[] }
  | { readonly kind: 'result'; readonly task: number; readonly result: TaskResult };
