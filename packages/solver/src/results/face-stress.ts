import type { StressLayer } from '../section/stress-layers.ts';
import type { StressPart } from './stress-part.ts';

/** Strain of a plate at the corners of its triangles. */
export interface PlateStrain {
  /** `[9 * nTriangles]` kxx, kyy, 2 kxy, 1/mm. */
  readonly curvature: Float64Array;
  /** `[9 * nTriangles]` exx, eyy, gxy at z = 0 of the layers; `null` where the plate does not stretch. */
  readonly stretch: Float64Array | null;
}

/** Lower and upper face of a layer. */
export type Face = 0 | 1;

/**
 * Stress on both faces at every place of a part, `sigma = Q (eps0 + z kappa - free)`.
 *
 * @param free strain at the faces of a layer that costs no stress; none if left out
 * @returns `[6 * nPlaces]` sxx, syy, sxy on the lower face, then on the upper, MPa
 */
export function faceStresses(
  { places }: Pick<StressPart, 'places'>,
  { curvature, stretch }: PlateStrain,
  free: (layer: StressLayer) => readonly [lower: number, upper: number] = () => [0, 0],
): Float64Array {
  const { layer, corner } = places;
  const known = new Map<StressLayer, readonly [lower: number, upper: number]>();
  const freeOf = (each: StressLayer) => {
    const value = known.get(each) ?? free(each);
    known.set(each, value);
    return value;
  };
  const stress = new Float64Array(6 * corner.length);
  for (let place = 0; place < corner.length; place++) {
    const { stiffness: Q, faces } = layer[place];
    const costless = freeOf(layer[place]);
    const at = 3 * corner[place];
    for (let face = 0; face < 2; face++) {
      const z = faces[face];
      const exx = z * curvature[at] - costless[face] + (stretch === null ? 0 : stretch[at]);
      const eyy = z * curvature[at + 1] - costless[face] + (stretch === null ? 0 : stretch[at + 1]);
      const gxy = z * curvature[at + 2] + (stretch === null ? 0 : stretch[at + 2]);
      const out = 6 * place + 3 * face;
      stress[out] = Q[0] * exx + Q[1] * eyy + Q[2] * gxy;
      stress[out + 1] = Q[1] * exx + Q[3] * eyy + Q[4] * gxy;
      stress[out + 2] = Q[2] * exx + Q[4] * eyy + Q[5] * gxy;
    }
  }
  return stress;
}
