import type { Mesh } from '../mesh/mesh.ts';
import type { Plane } from './best-fit-plane.ts';

/**
 * Mean over some triangles of a function of the deviation `w - (a + bx x + by y)`: the three mid-sides of each, which is
 * exact to degree 2 (Zienkiewicz and Taylor, The Finite Element Method, triangle rule b; from memory), hence for
 * any linear function, w being quadratic in a triangle (element/deflection.ts).
 *
 * @param u `[3 * nNodes]` w, thetaX, thetaY
 */
export function areaMean(
  { x, y, triangles: corners }: Pick<Mesh, 'x' | 'y' | 'triangles'>,
  u: Float64Array,
  { a, bx, by }: Plane,
  triangles: Uint32Array,
  of: (deviation: number) => number,
): number {
  let sum = 0;
  let total = 0;
  for (const t of triangles) {
    let sides = 0;
    let twiceArea = 0;
    for (let k = 0; k < 3; k++) {
      const i = corners[3 * t + k];
      const j = corners[3 * t + ((k + 1) % 3)];
      // In the middle of a side L_i L_j = 1/4.
      const bulge = ((u[3 * j + 2] - u[3 * i + 2]) * (x[j] - x[i]) - (u[3 * j + 1] - u[3 * i + 1]) * (y[j] - y[i])) / 8;
      const plane = a + (bx * (x[i] + x[j]) + by * (y[i] + y[j])) / 2;
      sides += of((u[3 * i] + u[3 * j]) / 2 + bulge - plane);
      twiceArea += x[i] * y[j] - x[j] * y[i];
    }
    sum += (twiceArea / 6) * sides;
    total += twiceArea / 2;
  }
  return sum / total;
}
