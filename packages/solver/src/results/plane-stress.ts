/** Larger principal stress of sxx, syy, sxy at `at`, MPa: `(sxx + syy)/2 + sqrt(((sxx - syy)/2)^2 + sxy^2)`. */
export function firstPrincipal(stress: Float64Array, at = 0): number {
  return (stress[at] + stress[at + 1]) / 2 + radius(stress, at);
}

/** Smaller principal stress of sxx, syy, sxy at `at`, MPa. */
export function secondPrincipal(stress: Float64Array, at = 0): number {
  return (stress[at] + stress[at + 1]) / 2 - radius(stress, at);
}

/** Von Mises stress of sxx, syy, sxy at `at`, MPa: `sqrt(sxx^2 - sxx syy + syy^2 + 3 sxy^2)`. */
export function vonMises(stress: Float64Array, at = 0): number {
  const [sxx, syy, sxy] = [stress[at], stress[at + 1], stress[at + 2]];
  return Math.sqrt(sxx * sxx - sxx * syy + syy * syy + 3 * sxy * sxy);
}

/** Radius of Mohr's circle. */
function radius(stress: Float64Array, at: number): number {
  const half = (stress[at] - stress[at + 1]) / 2;
  const shear = stress[at + 2];
  return Math.sqrt(half * half + shear * shear);
}
