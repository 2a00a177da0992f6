import { Fault } from '../fault/fault.ts';
import { SHEAR_CORRECTION, shearModulus } from './isotropic.ts';
import type { Membrane } from './membrane.ts';
import type { Rigidity } from './rigidity.ts';
import type { Layer } from './section.ts';

/** Gap or overlap between neighbours over the height of the stack that still counts as none. */
const TIGHT = 1e-9;

/** A stack of bonded layers as a beam in one of the two ways an isotropic layer strains. */
interface Stack {
  /** `sum m t`, N/mm */
  readonly stretching: number;
  /** Height of the neutral surface above z = 0, mm. */
  readonly neutral: number;
  /** `sum m (t^3/12 + t z^2)` about that surface, N mm. */
  readonly bending: number;
}

/**
 * Layers bonded to one stack, `A, B, D = sum Q (t, t z, t^3/12 + t z^2)` with Q the plane-stress stiffness and z the
 * height of the layer's middle (classical laminate theory), bending about its own neutral surface.
 *
 * Isotropic layers all strain alike in two ways: equally in all directions with modulus `Q11 + Q12 = E/(1 - nu)`, and by
 * shear (two strains of opposite sign are one turned by 45 degrees) with `Q11 - Q12 = E/(1 + nu)`. In each the stack is a
 * composite beam. Transverse shear is the sum of the layers' own, an upper bound where they differ much.
 *
 * @throws Fault OVERLAP, OUT_OF_RANGE (a gap)
 */
export function bondedLayers(layers: readonly Layer[], path: string): { rigidity: Rigidity; membrane: Membrane } {
  requireContact(layers, path);
  const equal = stackOf(layers, ({ E, nu }) => E / (1 - nu));
  const sheared = stackOf(layers, ({ E, nu }) => E / (1 + nu));
  const shear = layers.reduce(
    (sum, { E, nu, thickness }) => sum + SHEAR_CORRECTION * shearModulus(E, nu) * thickness,
    0,
  );
  const [c11, c12] = halves(equal.neutral, sheared.neutral);
  return {
    rigidity: { bending: fromModes(equal.bending, sheared.bending), shear: Float64Array.of(shear, 0, shear) },
    membrane: {
      stretching: fromModes(equal.stretching, sheared.stretching),
      offset: Float64Array.of(c11, c12, 0, c12, c11, 0, 0, 0, sheared.neutral),
    },
  };
}

function stackOf(layers: readonly Layer[], modulus: (layer: Layer) => number): Stack {
  // Heights from the middle of the stack: what is symmetric then stays so to rounding.
  const middle = bondedMiddle(layers);
  let [stretching, first, second] = [0, 0, 0];
  for (const layer of layers) {
    const { thickness: t, bottom } = layer;
    const z = bottom + t / 2 - middle;
    const m = modulus(layer);
    stretching += m * t;
    first += m * t * z;
    second += m * (t ** 3 / 12 + t * z * z);
  }
  return { stretching, neutral: middle + first / stretching, bending: second - first ** 2 / stretching };
}

/** `[11, 12, 13, 22, 23, 33]` with `11 + 12` and `11 - 12 = 2 * 33` as given. */
function fromModes(equal: number, sheared: number): Float64Array {
  const [q11, q12] = halves(equal, sheared);
  return Float64Array.of(q11, q12, 0, q11, 0, sheared / 2);
}

function halves(sum: number, difference: number): [number, number] {
  return [(sum + difference) / 2, (sum - difference) / 2];
}

/** Height of the middle between the lowest and the highest face, mm. */
export function bondedMiddle(layers: readonly Layer[]): number {
  return (Math.min(...layers.map(({ bottom }) => bottom)) + Math.max(...layers.map(top))) / 2;
}

/** Sum of the thicknesses, mm. */
export function heightOf(layers: readonly Pick<Layer, 'thickness'>[]): number {
  return layers.reduce((sum, { thickness }) => sum + thickness, 0);
}

function top({ bottom, thickness }: Layer): number {
  return bottom + thickness;
}

/** Bonded layers fill their stack: each begins where the one below ends. */
function requireContact(layers: readonly Layer[], path: string): void {
  const upwards = layers.map((layer, index) => ({ layer, index })).sort((a, b) => a.layer.bottom - b.layer.bottom);
  for (let k = 1; k < upwards.length; k++) {
    const below = upwards[k - 1];
    const { layer, index } = upwards[k];
    const gap = layer.bottom - top(below.layer);
    if (Math.abs(gap) <= TIGHT * (top(layer) - below.layer.bottom)) continue;
    const at = `${path}.layers.${index}.bottom`;
    const facts = `bonded layer ${index} of ${path} begins at z = ${layer.bottom} mm, layer ${below.index} below it ends at ${top(below.layer)} mm`;
    if (gap < 0)
      throw new Fault('OVERLAP', `Two layers fill the same height: ${facts}. Move one, or join them "sliding".`, at, {
        overlap: -gap,
      });
    throw new Fault('OUT_OF_RANGE', `A gap can't be bonded: ${facts}. Close it, or join them "sliding".`, at, { gap });
  }
}
