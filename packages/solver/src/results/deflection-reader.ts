import { deflectionShape } from '../element/deflection.ts';
import { barycentric, type Locator, locate } from '../mesh/locate.ts';

/**
 * Reads the deflection anywhere on the plate, by the shape functions of its element.
 *
 * @param u `[3 * nNodes]` w, thetaX, thetaY
 * @returns w in mm at a point; NaN off the plate
 */
export function deflectionReader(locator: Locator, u: Float64Array): (px: number, py: number) => number {
  const { mesh } = locator;
  const [x, y, N] = [new Float64Array(3), new Float64Array(3), new Float64Array(9)];
  return (px, py) => {
    const t = locate(locator, px, py);
    if (t < 0) return Number.NaN;
    for (let c = 0; c < 3; c++) {
      x[c] = mesh.x[mesh.triangles[3 * t + c]];
      y[c] = mesh.y[mesh.triangles[3 * t + c]];
    }
    deflectionShape(x, y, ...barycentric(mesh, t, px, py), N);
    let w = 0;
    for (let c = 0; c < 3; c++) {
      const node = mesh.triangles[3 * t + c];
      for (let dof = 0; dof < 3; dof++) w += N[3 * c + dof] * u[3 * node + dof];
    }
    return w;
  };
}
