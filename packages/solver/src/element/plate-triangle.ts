import { shearPlateCurvature, shearPlateStiffness } from './shear-plate-triangle.ts';
import { thinPlateCurvature, thinPlateStiffness } from './thin-plate-triangle.ts';

/** Stiffness of the plate triangle with this shear stiffness; `null` is rigid in shear, hence thin. `[9 * 9]` out. */
export function plateStiffness(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array | null,
  Ke: Float64Array,
): void {
  if (shear === null) thinPlateStiffness(x, y, bending, Ke);
  else shearPlateStiffness(x, y, bending, shear, Ke);
}

/** Curvature operator of the same triangle at barycentric coordinates: `{kxx, kyy, 2 kxy} = B u`. `[3 * 9]` out. */
export function plateCurvature(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array | null,
  l0: number,
  l1: number,
  l2: number,
  B: Float64Array,
): void {
  if (shear === null) thinPlateCurvature(x, y, l0, l1, l2, B);
  else shearPlateCurvature(x, y, bending, shear, l0, l1, l2, B);
}
