import type { Point } from '../geometry/point.ts';
import type { Site } from '../layout/site.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { StiffnessTerms } from '../model/fastener-stiffness.ts';
import type { SiteContact } from './contact.ts';
import type { JointResult } from './joint.ts';
import type { SeatResult } from './seats.ts';

/** A signed extreme of a field over the site area. */
export interface Extreme {
  /** mm, away from the board positive. */
  readonly value: number;
  readonly at: Point;
  /** Name of the site it lies in. */
  readonly site: string;
}

export interface SiteResult {
  readonly name: string;
  /** Largest deviation of this site from the fastener plane, signed, mm. */
  readonly bow: number;
  readonly at: Point;
  /** Minimum-zone flatness of this site alone, mm. */
  readonly flatness: number;
  /** Contact force left to its probes; left out when the model does not give their rate. */
  readonly contact?: SiteContact;
}

/** ISO 12781-1 parameters of a set of points, mm. */
export interface Flatness {
  /** Least-squares: total, peak above, valley below (positive), root mean square. */
  readonly leastSquares: {
    readonly total: number;
    readonly peak: number;
    readonly valley: number;
    readonly rms: number;
  };
  /** Minimum zone: least distance between two parallel planes that hold all points. */
  readonly minimumZone: number;
}

export interface FastenerResult {
  readonly name: string;
  readonly at: Point;
  /** Force it exerts on the head along +z, N; negative holds the head back to the board. */
  readonly reaction: number;
  /** Deflection of the head at its seat, mm. */
  readonly w: number;
  /** False when it acts one way only and has let go: it carries nothing and is no part of the fastener plane. */
  readonly holds: boolean;
  /** Stiffness used, N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  /** What an estimated stiffness is made of; `null` where the model gives it. The same in every case. */
  readonly terms: StiffnessTerms | null;
  /** What the reaction makes of its preload; `null` without one. */
  readonly joint: JointResult | null;
}

/** Stress of one part, body or frame, in one load case. The largest counts hole edges and bearings. */
export interface PartStrength {
  readonly part: 'body' | 'frame';
  /** Name of its material. */
  readonly material: string;
  /** What is compared with the strength: the largest tensile principal stress where it is brittle, else von Mises. */
  readonly measure: 'principal' | 'von Mises';
  /** MPa; in a drilled field at the edge of a hole, at a fastener with the equivalent radius of its bearing. */
  readonly stress: number;
  /** The same stress averaged over holes and ligaments, MPa; that itself where nothing is drilled. */
  readonly gross: number;
  readonly at: Point;
  /** Face of the part that it is on. */
  readonly face: 'board' | 'device';
  /** Fastener whose bearing it is under; `null` elsewhere. */
  readonly fastener: string | null;
  /** Name of the fastener, or of the nearest site. */
  readonly near: string;
  /** MPa; `null` where the material gives none. */
  readonly strength: number | null;
  /** Strength over stress, at most 1e6; `null` without a strength. */
  readonly factor: number | null;
  /** Weibull, over all of its surface; `null` unless the material is ceramic with a strength and a Weibull modulus. */
  readonly failureProbability: number | null;
}

/** Stresses of one load case. */
export interface CaseStrength {
  /** Body, then frame if there is one. */
  readonly parts: readonly PartStrength[];
  /** `[nNodes]` largest tensile principal stress on either face of the body, at hole edges where drilled, MPa; 0 off it. */
  readonly bodyTension: Float64Array;
}

/** Result of one load case. Fields are per mesh node. */
export interface CaseResult {
  readonly name: string;
  /** Case of the model that this one was enumerated for, over a wafer; left out when it is that case. */
  readonly family?: string;
  /** `[nNodes]` deflection along +z, mm. */
  readonly w: Float64Array;
  /** `[nNodes]` deviation from the fastener plane, mm: what the bow is measured on. */
  readonly deviation: Float64Array;
  /** Fastener plane `w = a + bx x + by y`, mm. */
  readonly fastenerPlane: readonly [a: number, bx: number, by: number];
  readonly bow: Extreme;
  readonly flatness: Flatness;
  /** Slope of the site area's least-squares plane against the board, mm/mm. */
  readonly tilt: { readonly slope: number; readonly alongX: number; readonly alongY: number };
  readonly sites: readonly SiteResult[];
  readonly fasteners: readonly FastenerResult[];
  /** Empty when the head has none. */
  readonly seats: readonly SeatResult[];
  /** `null` for a live answer, and where stress was left out. */
  readonly strength: CaseStrength | null;
  /** Sum of loads, less what probes lose that relax, and of reactions along +z, N. */
  readonly load: number;
  readonly reaction: number;
  /** Scaled residual `|K u - f| / (|K| |u| + |f|)` in the infinity norm; null for a live answer. */
  readonly residual: number | null;
}

export type Outcome = 'pass' | 'marginal' | 'fail';

export interface CriterionVerdict {
  readonly criterion: 'bow' | 'flatness' | 'strength' | 'failureProbability' | 'fasteners' | 'contact';
  readonly outcome: Outcome;
  /** Of value, limit and error: mm, N, or 1 for a ratio. */
  readonly unit: 'mm' | 'N' | '1';
  /** Whether the value may be at most or must be at least the limit. */
  readonly bound: 'most' | 'least';
  /** Magnitude. */
  readonly value: number;
  readonly limit: number;
  /** Estimated numerical error of `value`; an estimate, not a bound; `null` when not estimated (live answers). */
  readonly error: number | null;
  /** What transverse shear adds to `value`; `null` when solved thin or not compared (live answers). */
  readonly shearAdds: number | null;
  /** The value at both ends of a joint between sliding and bonded, of which the worse is judged; `null` for other joints. */
  readonly bracket: Readonly<Record<'sliding' | 'bonded', number>> | null;
  readonly case: string;
  /** Name of the site, or of the fastener, where it is worst. */
  readonly site: string;
  /** What makes it so, where a criterion has several readings. */
  readonly mode?: string;
}

export interface Verdict {
  readonly outcome: Outcome;
  readonly criteria: readonly CriterionVerdict[];
  /** One sentence in plain words. */
  readonly sentence: string;
  /** Things the engineer should know before trusting it, one sentence each. */
  readonly remarks: readonly string[];
}

export interface HeadResult {
  readonly name: string;
  readonly mesh: Mesh;
  readonly sites: readonly Site[];
  readonly cases: readonly CaseResult[];
  readonly verdict: Verdict;
  readonly dofs: number;
  /** Milliseconds by stage; a stage that was reused from the run before reads 0. */
  readonly timings: Readonly<Record<string, number>>;
}
