import { deflectionShape } from '../element/deflection.ts';
import { barycentric, type Locator, locate } from '../mesh/locate.ts';
import type { SiteProbes } from '../model/site-probes.ts';
import type { Plane } from './best-fit-plane.ts';
import type { ContactForce } from './contact-force.ts';

/** Probes of a site that are listed one by one, and where their deflection is read from. */
export interface ListedProbes {
  readonly locator: Locator;
  readonly points: NonNullable<SiteProbes['points']>;
}

/**
 * Force that one end of listed probes keeps: `start + slope (w - plane)` at each of them, never below zero.
 *
 * @param start N, of each probe in turn
 * @param slope N/mm
 * @param u `[3 * nNodes]` w, thetaX, thetaY
 */
export function listedForce(
  { locator, points }: ListedProbes,
  u: Float64Array,
  { a, bx, by }: Plane,
  start: (preload: number) => number,
  slope: number,
): ContactForce {
  const { mesh } = locator;
  const [x, y, N] = [new Float64Array(3), new Float64Array(3), new Float64Array(9)];
  let [least, most, sum] = [Infinity, -Infinity, 0];
  for (const [px, py, preload] of points) {
    const t = locate(locator, px, py);
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
    const force = Math.max(0, start(preload) + slope * (w - a - bx * px - by * py));
    least = Math.min(least, force);
    most = Math.max(most, force);
    sum += force;
  }
  return { minimum: least, mean: sum / points.length, spread: most - least, compression: least / Math.abs(slope) };
}
