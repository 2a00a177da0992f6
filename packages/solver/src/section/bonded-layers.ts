import { Fault } from '../fault/fault.ts';
import { isotropicBending, SHEAR_CORRECTION, shearModulus } from './isotropic.ts';
import type { Rigidity } from './rigidity.ts';
import type { Layer } from './section.ts';

/** Gap or overlap between neighbours, and eccentricity of the stack, over its height, that still count as none. */
const TIGHT = 1e-9;

/**
 * Layers bonded to one stack that is symmetric about its middle: `D = sum Q (t^3/12 + t z^2)`, with Q the plane-stress
 * stiffness and z the height of the layer's middle above that of the stack (classical laminate theory; coupling
 * `B = sum Q t z` vanishes). Shear is the sum of the layers' own, an upper bound where they differ much.
 *
 * @throws Fault OVERLAP, OUT_OF_RANGE (a gap) or NOT_YET (not symmetric)
 */
export function bondedLayers(layers: readonly Layer[], path: string): Rigidity {
  requireContact(layers, path);
  const middle = bondedMiddle(layers);
  const height = Math.max(...layers.map(top)) - Math.min(...layers.map(({ bottom }) => bottom));

  const bending = new Float64Array(6);
  const coupling = new Float64Array(6);
  let membrane = 0;
  let shear = 0;
  for (const { E, nu, thickness: t, bottom } of layers) {
    const z = bottom + t / 2 - middle;
    const Q = isotropicBending(E / (1 - nu * nu), nu);
    for (let c = 0; c < 6; c++) {
      bending[c] += Q[c] * (t ** 3 / 12 + t * z * z);
      coupling[c] += Q[c] * t * z;
    }
    membrane += Q[0] * t;
    shear += SHEAR_CORRECTION * shearModulus(E, nu) * t;
  }
  const eccentricity = Math.max(...coupling.map(Math.abs)) / membrane;
  if (eccentricity > TIGHT * height)
    throw new Fault(
      'NOT_YET',
      `The bonded layers of ${path} are not symmetric about a common mid-plane (their stiffness lies ${eccentricity.toPrecision(3)} mm off it), which is not supported yet. Join them "sliding", or set the frame level so that the layers mirror each other.`,
      `${path}.join`,
      { eccentricity },
    );
  return { bending, shear: Float64Array.of(shear, 0, shear) };
}

/** Height of the middle between the lowest and the highest face, mm. */
export function bondedMiddle(layers: readonly Layer[]): number {
  return (Math.min(...layers.map(({ bottom }) => bottom)) + Math.max(...layers.map(top))) / 2;
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
