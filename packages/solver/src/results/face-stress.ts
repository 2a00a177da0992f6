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
 * @returns `[6 * nPlaces]` sxx, syy, sxy on the lower face, then on the upper, MPa
 */
export function faceStresses({ places }: Pick<StressPart, 'places'>, { curvature, stretch }: PlateStrain) {
  const { layer, corner } = places;
  const stress = new Float64Array(6 * corner.length);
  for (let place = 0; place < corner.length; place++) {
    const { stiffness: Q, faces, free } = layer[place];
    const at = 3 * corner[place];
    for (let face = 0; face < 2; face++) {
      const z = faces[face];
      const exx = z * curvature[at] - free[face] + (stretch === null ? 0 : stretch[at]);
      const eyy = z * curvature[at + 1] - free[face] + (stretch === null ? 0 : stretch[at + 1]);
      const gxy = z * curvature[at + 2] + (stretch === null ? 0 : stretch[at + 2]);
      const out = 6 * place + 3 * face;
      stress[out] = Q[0] * exx + Q[1] * eyy + Q[2] * gxy;
      stress[out + 1] = Q[1] * exx + Q[3] * eyy + Q[4] * gxy;
      stress[out + 2] = Q[2] * exx + Q[4] * eyy + Q[5] * gxy;
    }
  }
  return stress;
}
