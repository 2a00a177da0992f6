import type { Point } from '../src/geometry/point.ts';
import type { HeadModel } from '../src/model/head-model.ts';
import type { PlateProblem } from '../src/plate/plate-problem.ts';
import type { HeadResult } from '../src/results/head-result.ts';

/** Read in the source, recalled from it without seeing it again, or computed independently by the method named. */
export type Basis = 'published' | 'memory' | 'derived';

/** One number that an independent source gives for one quantity of a model. */
interface Check<Reading> {
  /** What is read and where, such as `w at the centre`. */
  readonly quantity: string;
  /** Unit of `expected`, such as `q a^4/D` or `N`. */
  readonly unit: string;
  /** That unit in mm, N and MPa: what is read is divided by it. */
  readonly scale: number;
  readonly expected: number;
  /** Relative to `expected`; where that is zero, in `unit`. */
  readonly tolerance: number;
  /** Why that tolerance. */
  readonly why: string;
  /** Author, year and section, equation or table; for a derived value the method. */
  readonly source: string;
  readonly basis: Basis;
  readonly read: Reading;
}

/** What is read from the answer to a plate problem. */
export type PlateReading =
  | { readonly of: 'w' | 'mxx' | 'myy' | 'mxy'; readonly at: Point }
  | { readonly of: 'reaction'; readonly support: number }
  /** Highest point of the plate over its lowest. */
  | { readonly of: 'peak to valley' }
  /** Minimum zone of `report.over`. */
  | { readonly of: 'flatness' };

export type PlateCheck = Check<PlateReading>;

/** A plate solved on three meshes. */
export interface PlateModel {
  readonly kind: 'plate';
  readonly name: string;
  /** Everything but its mesh and the points that its checks read. */
  readonly plate: Omit<PlateProblem, 'mesh'>;
  /** Element size of the finest mesh, mm. */
  readonly size: number;
  readonly checks: readonly PlateCheck[];
}

/** A head solved on three meshes. */
export interface HeadCheckModel {
  readonly kind: 'head';
  readonly name: string;
  readonly head: Omit<HeadModel, 'mesh'>;
  readonly size: number;
  readonly checks: readonly Check<(result: HeadResult) => number>[];
}

/** A part of the solver that needs no mesh. */
export interface FormulaModel {
  readonly kind: 'formula';
  readonly name: string;
  readonly checks: readonly Check<() => number>[];
}

export type VerificationModel = PlateModel | HeadCheckModel | FormulaModel;

export interface Topic {
  readonly name: string;
  /** One sentence for the head of its table. */
  readonly about: string;
  readonly models: readonly VerificationModel[];
}
