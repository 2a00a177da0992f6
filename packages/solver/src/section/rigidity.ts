/**
 * Stiffness of a plate section about its reference plane, in global axes.
 *
 * Moments `{mxx, myy, mxy} = D {kxx, kyy, 2 kxy}` with curvatures
 * `kxx = thetaY,x`, `kyy = -thetaX,y`, `2 kxy = thetaY,y - thetaX,x`
 * (thin: `-w,xx`, `-w,yy`, `-2 w,xy`), so a plate that sags along +z under a load along +z has positive moments.
 */
export interface Rigidity {
  /** Bending `[D11, D12, D13, D22, D23, D33]`, N mm; D33 multiplies `2 kxy`. Isotropic: D, nu D, 0, D, 0, (1-nu) D/2. */
  readonly bending: Float64Array;
  /** Transverse shear `[S11, S12, S22]` with the correction factor applied, N/mm; `null` where the section gives none. */
  readonly shear: Float64Array | null;
}
