import { Fault } from '../fault/fault.ts';
import type { Fastener, Material } from './head-model.ts';
import { coneCompliance, indentationCompliance, type ScrewCompliance, screwCompliance } from './joint-compliance.ts';
import { findScrew, type Screw } from './screws.ts';
import type { TappedPart } from './tapped-part.ts';

/** One part of the stack that a fastener clamps, from the board outwards. */
export interface ClampedLayer {
  readonly thickness: number;
  readonly material: Material;
}

/** What an `auto` stiffness is made of, N/mm. An estimate: see {@link fastenerStiffness}. */
export interface StiffnessTerms {
  /** The screw alone: its four compliances in series. */
  readonly screw: number;
  readonly clamped: number;
  /** Local indentation of the part under the screw head. */
  readonly seat: number;
  /** Grip: frame and body between screw head and board, mm. */
  readonly clampedLength: number;
  /** The same one by one, mm/N. */
  readonly compliance: ScrewCompliance & { readonly clamped: number; readonly seat: number };
}

export interface FastenerStiffness {
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  /** `null` where the model gives the stiffness. */
  readonly terms: StiffnessTerms | null;
}

/**
 * Stiffness that a fastener holds its seat with.
 *
 * `auto` is an estimate for a preloaded screw from the device side into the board or its stiffener, which count as
 * rigid but for the thread: screw and clamped parts side by side (VDI 2230, from memory), in series with the local
 * indentation `1.3 * 2 r E / (1 - nu^2)` that a plate does not know of. Layers of unlike modulus count in series. It
 * holds while the joint is closed; a joint that opens has the screw alone.
 *
 * @param bearing diameter of the bearing disc, mm
 * @param stack what is clamped there, from the board outwards
 * @param tapped what the screw is tapped into; `null` = as stiff as the screw
 * @throws Fault UNKNOWN_SCREW, SCHEMA when `auto` has no screw to go by, OUT_OF_RANGE when the bearing fits in the hole
 */
export function fastenerStiffness(
  fastener: Fastener,
  bearing: number,
  stack: readonly ClampedLayer[],
  path: string,
  tapped: TappedPart | null = null,
): FastenerStiffness {
  const { stiffness = 'auto' } = fastener;
  if (stiffness === 'rigid') return { stiffness: null, terms: null };
  if (stiffness !== 'auto') return { stiffness, terms: null };
  const terms = stiffnessTerms(fastener, bearing, stack, path, tapped);
  return { stiffness: 1 / (1 / (terms.screw + terms.clamped) + 1 / terms.seat), terms };
}

/** The terms of {@link fastenerStiffness} for a screw, whether or not the model asks for `auto`. */
export function stiffnessTerms(
  fastener: Fastener,
  bearing: number,
  stack: readonly ClampedLayer[],
  path: string,
  tapped: TappedPart | null = null,
): StiffnessTerms {
  const screw = screwOf(fastener, bearing, path);
  const clampedLength = stack.reduce((sum, { thickness }) => sum + thickness, 0);
  const modulus = clampedLength / stack.reduce((sum, { thickness, material }) => sum + thickness / material.E, 0);
  const parts = screwCompliance(screw, clampedLength, fastener.engagement, tapped?.E);
  const clamped = coneCompliance(bearing, screw.hole, clampedLength, modulus);
  const seat = indentationCompliance(bearing, stack[stack.length - 1].material);
  return {
    screw: 1 / (parts.head + parts.free + parts.engaged + parts.tapped),
    clamped: 1 / clamped,
    seat: 1 / seat,
    clampedLength,
    compliance: { ...parts, clamped, seat },
  };
}

function screwOf({ name, screw: size }: Fastener, bearing: number, path: string): Screw {
  if (size === undefined)
    throw new Fault(
      'SCHEMA',
      `Fastener ${name} has neither a screw nor a stiffness. Give "screw", such as "M2.5", or "stiffness" in N/mm or "rigid".`,
      `${path}.screw`,
      { expected: 'a screw or a stiffness' },
    );
  const screw = findScrew(size, `${path}.screw`);
  if (bearing > screw.hole) return screw;
  throw new Fault(
    'OUT_OF_RANGE',
    `Fastener ${name} has a bearing of ${bearing} mm, no wider than the ${screw.hole} mm hole for ${size}. Give the diameter of the screw head or washer.`,
    `${path}.bearing`,
    { value: bearing, expected: `above ${screw.hole}` },
  );
}
