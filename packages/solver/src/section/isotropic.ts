/** Share of the thickness that carries transverse shear: 5/6, parabolic stress (Reissner 1945). */
export const SHEAR_CORRECTION = 5 / 6;

/** `[D11, D12, D13, D22, D23, D33]` of an isotropic plate: D, nu D, 0, D, 0, (1 - nu) D/2. */
export function isotropicBending(D: number, nu: number): Float64Array {
  return Float64Array.of(D, nu * D, 0, D, 0, ((1 - nu) * D) / 2);
}

/** G, MPa. */
export function shearModulus(E: number, nu: number): number {
  return E / (2 * (1 + nu));
}
