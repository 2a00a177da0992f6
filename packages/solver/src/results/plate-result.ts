import type { Point } from '../geometry/point.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Plane } from './best-fit-plane.ts';
import type { Flatness } from './head-result.ts';
import type { Moments } from './moments.ts';

/** A value of a field and where it stands. */
export interface FieldValue {
  /** mm */
  readonly value: number;
  readonly at: Point;
}

/** Answer to a plate problem: the contract of `flathead plate --json`, plus the fields that it leaves out. */
export interface PlateResult {
  readonly w: {
    readonly max: FieldValue;
    readonly min: FieldValue;
    /** mm, at `report.at` */
    readonly at: readonly number[];
  };
  readonly moments: {
    /** N mm/mm, at `report.at` */
    readonly at: readonly Moments[];
  };
  /** Force of each support on the plate along +z, N, in the order of the problem. */
  readonly reactions: readonly number[];
  /** Of `report.over`, mm; `null` when none was asked for. */
  readonly flatness: Flatness | null;
  /** Least-squares plane of `report.over`. */
  readonly bestFitPlane: Plane | null;
  readonly mesh: { readonly nodes: number; readonly elements: number; readonly minAngle: number };
  readonly dofs: number;
  /** Sum of the loads along +z, N. */
  readonly load: number;
  /** Scaled residual `|K u - f| / (|K| |u| + |f|)` in the infinity norm; null when it was not computed. */
  readonly residual: number | null;
  /** Two-mesh estimates of numerical errors, each in the unit of its value. Estimates, not bounds. */
  readonly error: {
    /** Of the largest |w|, mm. */
    readonly max: number;
    /** The same relative to it. */
    readonly estimate: number;
    /** Of `w.at`, mm. */
    readonly at: readonly number[];
    /** Of `moments.at`, N. */
    readonly moments: readonly Moments[];
    /** Of `reactions`, N. */
    readonly reactions: readonly number[];
    /** Of `flatness.minimumZone`, mm; `null` when none was asked for. */
    readonly flatness: number | null;
  };
  /** Milliseconds by stage. */
  readonly timings: Readonly<Record<string, number>>;
}

/** Result with its fields, for those who draw or post-process it. */
export interface PlateField extends PlateResult {
  readonly fields: {
    readonly mesh: Mesh;
    /** `[3 * nNodes]` w, thetaX, thetaY, mm and rad. */
    readonly u: Float64Array;
  };
}
