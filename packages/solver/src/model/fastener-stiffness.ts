import { Fault } from '../fault/fault.ts';
import type { Fastener, Material } from './head-model.ts';
import { findScrew, type Screw } from './screws.ts';

/** One part of the stack that a fastener clamps, from the board outwards. */
export interface ClampedLayer {
  readonly thickness: number;
  readonly material: Material;
}

/** What an `auto` stiffness is made of, N/mm. An estimate: see {@link fastenerStiffness}. */
export interface StiffnessTerms {
  readonly screw: number;
  readonly clamped: number;
  /** Local indentation of the part under the screw head. */
  readonly seat: number;
  /** mm */
  readonly clampedLength: number;
}

export interface FastenerStiffness {
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  /** `null` where the model gives the stiffness. */
  readonly terms: StiffnessTerms | null;
}

/** Young's modulus of the screw, MPa. */
const SCREW_E = 200_000;
/** Outer diameter of the clamped parts over that of the bearing; the cone depends on its logarithm only. */
const CONE_BASE = 3;
/** Indentation against that of an elastic half-space; calibrated against three-dimensional elasticity (derived). */
const SEAT_FACTOR = 1.3;

/**
 * Stiffness that a fastener holds its seat with.
 *
 * `auto` is an estimate for a preloaded screw from the device side into the board or its stiffener, which count as
 * rigid: screw and clamped parts side by side (VDI 2230, from memory), in series with the local indentation
 * `1.3 * 2 r E / (1 - nu^2)` that a plate does not know of. Layers of unlike modulus count in series. It holds while the
 * joint is closed; a joint that opens has the screw alone.
 *
 * @param bearing diameter of the bearing disc, mm
 * @param stack what is clamped there, from the board outwards
 * @throws Fault UNKNOWN_SCREW, SCHEMA when `auto` has no screw to go by, OUT_OF_RANGE when the bearing fits in the hole
 */
export function fastenerStiffness(
  { name, screw: size, stiffness = 'auto' }: Fastener,
  bearing: number,
  stack: readonly ClampedLayer[],
  path: string,
): FastenerStiffness {
  if (stiffness === 'rigid') return { stiffness: null, terms: null };
  if (stiffness !== 'auto') return { stiffness, terms: null };
  if (size === undefined)
    throw new Fault(
      'SCHEMA',
      `Fastener ${name} has neither a screw nor a stiffness. Give "screw", such as "M2.5", or "stiffness" in N/mm or "rigid".`,
      `${path}.screw`,
      { expected: 'a screw or a stiffness' },
    );
  const screw = findScrew(size, `${path}.screw`);
  if (bearing <= screw.hole)
    throw new Fault(
      'OUT_OF_RANGE',
      `Fastener ${name} has a bearing of ${bearing} mm, no wider than the ${screw.hole} mm hole for ${size}. Give the diameter of the screw head or washer.`,
      `${path}.bearing`,
      { value: bearing, expected: `above ${screw.hole}` },
    );
  const terms = stiffnessTerms(screw, bearing, stack);
  return { stiffness: 1 / (1 / (terms.screw + terms.clamped) + 1 / terms.seat), terms };
}

function stiffnessTerms(screw: Screw, bearing: number, stack: readonly ClampedLayer[]): StiffnessTerms {
  const clampedLength = stack.reduce((sum, { thickness }) => sum + thickness, 0);
  const modulus = clampedLength / stack.reduce((sum, { thickness, material }) => sum + thickness / material.E, 0);
  const { E, nu } = stack[stack.length - 1].material;
  return {
    screw: 1 / screwCompliance(screw, clampedLength),
    clamped: 1 / coneCompliance(bearing, screw.hole, clampedLength, modulus),
    seat: (SEAT_FACTOR * bearing * E) / (1 - nu * nu),
    clampedLength,
  };
}

/** `0.4 d/(E A_N) + l/(E A_3) + 0.5 d/(E A_3) + 0.33 d/(E A_N)`: head, free length, engaged thread, tapped part. */
function screwCompliance({ diameter: d, pitch }: Screw, length: number): number {
  const nominal = (Math.PI / 4) * d ** 2;
  const core = (Math.PI / 4) * (d - 1.22687 * pitch) ** 2;
  return ((0.4 + 0.33) * d) / (SCREW_E * nominal) + (length + 0.5 * d) / (SCREW_E * core);
}

/**
 * Clamped parts as one hollow cone, screw tapped in (w = 2):
 * `2 ln[(dw + dh)(dw + w l t - dh) / ((dw - dh)(dw + w l t + dh))] / (w E pi dh t)`.
 */
function coneCompliance(dw: number, dh: number, length: number, E: number): number {
  const w = 2;
  const t = 0.348 + 0.013 * Math.log(length / dw) + 0.193 * Math.log(CONE_BASE);
  const base = dw + w * length * t;
  return (2 * Math.log(((dw + dh) * (base - dh)) / ((dw - dh) * (base + dh)))) / (w * E * Math.PI * dh * t);
}
