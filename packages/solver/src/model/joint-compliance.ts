import type { Material } from './head-model.ts';
import type { Screw } from './screws.ts';
import { coreArea } from './thread.ts';

/** Compliances that the force of a screw passes through one after the other, mm/N. */
export interface ScrewCompliance {
  readonly head: number;
  /** Thread between head and board: the screw counts as threaded up to its head. */
  readonly free: number;
  /** Core of the engaged thread. */
  readonly engaged: number;
  /** The tapped part: its flanks, and the material around them. */
  readonly tapped: number;
}

/** Young's modulus of the screw, MPa. */
const SCREW_E = 200_000;
/** Outer diameter of the clamped parts over that of the bearing; the cone depends on its logarithm only. */
const CONE_BASE = 3;
/** Indentation against that of an elastic half-space; calibrated against three-dimensional elasticity (derived). */
const SEAT_FACTOR = 1.3;

/**
 * A screw after VDI 2230 (memory): head `0.4 d/(E A_N)`, free thread `l/(E A_3)`, engaged thread `0.5 d/(E A_3)`, tapped
 * part `0.33 d/(E_M A_N)`.
 *
 * The last two are for a long engagement. One of length L is a bar E A_3 on the springs of its flanks, whose compliance
 * at the loaded end is `delta coth(L / (E A_3 delta))`, with delta that of a long one (derived): both grow by that coth.
 *
 * @param length l, mm
 * @param engagement L, mm; long if left out
 * @param tappedE E_M, MPa; that of the screw if left out
 */
export function screwCompliance(screw: Screw, length: number, engagement = Infinity, tappedE = SCREW_E) {
  const d = screw.diameter;
  const nominal = (Math.PI / 4) * d ** 2;
  const core = SCREW_E * coreArea(screw);
  const engaged = (0.5 * d) / core;
  const tapped = (0.33 * d) / (tappedE * nominal);
  const short = 1 / Math.tanh(engagement / (core * (engaged + tapped)));
  return {
    head: (0.4 * d) / (SCREW_E * nominal),
    free: length / core,
    engaged: engaged * short,
    tapped: tapped * short,
  } satisfies ScrewCompliance;
}

/**
 * Clamped parts as one hollow cone, screw tapped in (w = 2), mm/N (VDI 2230, memory):
 * `2 ln[(dw + dh)(dw + w l t - dh) / ((dw - dh)(dw + w l t + dh))] / (w E pi dh t)`.
 *
 * @param dw bearing diameter, mm
 * @param dh hole diameter, mm
 */
export function coneCompliance(dw: number, dh: number, length: number, E: number): number {
  const w = 2;
  const t = 0.348 + 0.013 * Math.log(length / dw) + 0.193 * Math.log(CONE_BASE);
  const base = dw + w * length * t;
  return (2 * Math.log(((dw + dh) * (base - dh)) / ((dw - dh) * (base + dh)))) / (w * E * Math.PI * dh * t);
}

/** Local indentation under the bearing, mm/N: `(1 - nu^2) / (1.3 * dw E)`. */
export function indentationCompliance(dw: number, { E, nu }: Pick<Material, 'E' | 'nu'>): number {
  return (1 - nu * nu) / (SEAT_FACTOR * dw * E);
}
