import { Fault } from '../fault/fault.ts';
import type { StiffnessTerms } from './fastener-stiffness.ts';
import { proofStress, USUAL_GRADE } from './grades.ts';
import type { Fastener, Limits } from './head-model.ts';
import { findScrew } from './screws.ts';
import type { TappedPart } from './tapped-part.ts';
import { tappedShearArea } from './thread.ts';

/** Least and greatest, of what scatters. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** A preloaded screw joint as assembled. */
export interface Joint {
  /** N */
  readonly preload: Range;
  /** Share of a working load that the screw takes while the joint is closed; the rest unloads the clamped parts. */
  readonly share: number;
  /** Tension that the screw bears without a lasting stretch, N. */
  readonly proofLoad: number;
  /** Tension that shears the tapped thread off, N; `null` where the strength of what it is tapped into is not known. */
  readonly strippingLoad: number | null;
  /** Stiffness that the support has left once the joint has opened: screw and seat, N/mm. */
  readonly openStiffness: number;
}

/** `T = factor F d`; common practice, no source. */
const TORQUE_FACTOR = 0.2;
/** Scatter of a preload controlled by torque: 25 to 35 % (VDI 2230, memory). */
const TORQUE_SCATTER = 0.3;
/** Engaged diameters where the model does not say; common practice for steel, no source. */
const ENGAGED_DIAMETERS = 1;

/**
 * The joint of a fastener with a preload; `null` without one.
 *
 * `preload` is taken as it is unless `scatter` says otherwise; from `torque` it is `T / (0.2 d)`, give or take 30 %.
 * The load enters under the screw head, so that `share = delta_p / (delta_p + delta_s)` (VDI 2230, memory). Proof load
 * is tension alone, without the torsion of tightening. The tapped thread shears at `strength / sqrt(3)` (von Mises), on
 * an engagement of one diameter where none is given: both on the safe side.
 *
 * @throws Fault SCHEMA or OUT_OF_RANGE for fields that contradict each other
 */
export function jointOf(
  fastener: Fastener,
  terms: () => StiffnessTerms,
  tapped: TappedPart | null,
  path: string,
): Joint | null {
  requireConsistent(fastener, path);
  const preload = preloadOf(fastener, path);
  if (preload === null) return null;
  const screw = findScrew(fastener.screw!, `${path}.screw`);
  const { screw: k, seat, compliance } = terms();
  const shearArea = tappedShearArea(screw, fastener.engagement ?? ENGAGED_DIAMETERS * screw.diameter);
  const strength = tapped?.strength ?? null;
  return {
    preload,
    share: compliance.clamped / (compliance.clamped + 1 / k),
    proofLoad: proofStress[fastener.grade ?? USUAL_GRADE] * screw.stressArea,
    strippingLoad: strength === null ? null : (shearArea * strength) / Math.sqrt(3),
    openStiffness: 1 / (1 / k + 1 / seat),
  };
}

/** @throws Fault SCHEMA when fasteners are to be judged and none has a preload */
export function requireJudgeable({ fastener: limit }: Limits, joints: readonly (Joint | null)[]): void {
  if (limit === undefined || joints.some((joint) => joint !== null)) return;
  throw new Fault(
    'SCHEMA',
    'limits.fastener asks to judge the fasteners, but none has a preload. Give them "preload" in N or "torque" in N mm, or remove the limit.',
    'limits.fastener',
    { value: limit, expected: 'a fastener with preload or torque' },
  );
}

function preloadOf(fastener: Fastener, path: string): Range | null {
  const { preload, torque, torqueFactor = TORQUE_FACTOR } = fastener;
  if (preload === undefined && torque === undefined) return null;
  const { diameter } = findScrew(fastener.screw!, `${path}.screw`);
  const mean = preload ?? torque! / (torqueFactor * diameter);
  const scatter = fastener.scatter ?? (preload === undefined ? TORQUE_SCATTER : 0);
  return { low: mean * (1 - scatter), high: mean * (1 + scatter) };
}

function requireConsistent(fastener: Fastener, path: string): void {
  const { name, screw, preload, torque, acts = 'both', engagement } = fastener;
  const refuse = (key: keyof Fastener, message: string, code: 'SCHEMA' | 'OUT_OF_RANGE' = 'SCHEMA'): never => {
    throw new Fault(code, `Fastener ${name} ${message}`, `${path}.${key}`, { value: fastener[key] });
  };
  const needsScrew = (['grade', 'engagement', 'into', 'preload', 'torque'] as const).find(
    (key) => fastener[key] !== undefined,
  );
  if (screw === undefined && needsScrew !== undefined)
    refuse('screw', `has "${needsScrew}" but no screw that it could belong to. Give "screw", such as "M2.5".`);
  if (preload !== undefined && torque !== undefined)
    refuse('torque', 'has both a preload and a torque. Give one of them: a torque makes its own preload.');
  if (fastener.torqueFactor !== undefined && torque === undefined)
    refuse('torqueFactor', 'has a torqueFactor but no torque that it applies to. Give "torque" in N mm, or remove it.');
  if (preload === undefined && torque === undefined) {
    if (fastener.scatter !== undefined)
      refuse('scatter', 'has a scatter but no preload. Give "preload" in N or "torque" in N mm, or remove it.');
  } else if (acts !== 'both')
    refuse('acts', `has a preload but acts "${acts}" only. A preloaded joint holds both ways; leave out one of them.`);
  if (screw === undefined || engagement === undefined) return;
  const { pitch } = findScrew(screw, `${path}.screw`);
  if (engagement < pitch)
    refuse(
      'engagement',
      `has ${engagement} mm of engaged thread, less than one pitch of ${screw}. Give ${pitch} mm or more.`,
      'OUT_OF_RANGE',
    );
}
