import type { Joint, Range } from '../model/joint.ts';

/** A preloaded joint under the reaction of one case, at the low and the high end of its preload. */
export interface JointResult extends Joint {
  /** Tension of the screw, N. */
  readonly screwForce: Range;
  /** Force between head and board that is left, N; 0 where the joint has opened. */
  readonly clampLeft: Range;
  /** Greatest tension over the proof load. */
  readonly proofRatio: number;
  /** Greatest tension over what shears the tapped thread off; `null` where that is not known. */
  readonly strippingRatio: number | null;
  /** Share of the low preload that the joint has lost: 1 where it opens, negative where the head is pressed on. */
  readonly clampLoss: number;
  /** Whether it opens at the low end of its preload. */
  readonly opens: boolean;
}

/**
 * What a reaction makes of a preloaded joint (VDI 2230, memory). With the working load `F = -reaction`, that lifts the
 * head off the board, and the share Phi of the screw:
 *
 * - closed: screw `V + Phi F`, clamp `V - (1 - Phi) F`; screw less clamp is F
 * - open, where that clamp would be negative: screw F, clamp 0
 * - slack, where that screw would be negative: screw 0, clamp -F
 *
 * F is that of the closed joint; it is not found anew for an open one, which is softer.
 *
 * @param reaction force of the fastener on the head along +z, N
 */
export function jointUnder(joint: Joint, reaction: number): JointResult {
  const load = reaction === 0 ? 0 : -reaction;
  const { preload, proofLoad, strippingLoad } = joint;
  const low = forces(preload.low, joint.share, load);
  const high = forces(preload.high, joint.share, load);
  return {
    ...joint,
    screwForce: { low: low.screw, high: high.screw },
    clampLeft: { low: low.clamp, high: high.clamp },
    proofRatio: high.screw / proofLoad,
    strippingRatio: strippingLoad === null ? null : high.screw / strippingLoad,
    clampLoss: 1 - low.clamp / preload.low,
    opens: low.clamp === 0,
  };
}

function forces(preload: number, share: number, load: number): { readonly screw: number; readonly clamp: number } {
  const screw = preload + share * load;
  const clamp = screw - load;
  if (clamp <= 0) return { screw: load, clamp: 0 };
  return screw < 0 ? { screw: 0, clamp: -load } : { screw, clamp };
}
