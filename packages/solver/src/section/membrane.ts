/**
 * How a section stretches, beside its {@link Rigidity} which is that of bending about its own neutral surface.
 *
 * Classical laminate theory about a reference plane, `N = A e + B k`, `M = B e + D k`, with the square completed:
 * energy per area `1/2 (e + C k)' A (e + C k) + 1/2 k' (D - B C) k`, `C = A^-1 B`. C holds the height of the neutral
 * surface: `C = c I` where all layers have one Poisson's ratio.
 */
export interface Membrane {
  /** A as `[A11, A12, A13, A22, A23, A33]`, N/mm; A33 multiplies `2 exy`. */
  readonly stretching: Float64Array;
  /** C, `[3 * 3]` row-major, mm. */
  readonly offset: Float64Array;
}

/** Membrane of a section that is symmetric about a plane at a height. */
export function centredMembrane(stretching: Float64Array, height: number): Membrane {
  return { stretching, offset: Float64Array.of(height, 0, 0, 0, height, 0, 0, 0, height) };
}
