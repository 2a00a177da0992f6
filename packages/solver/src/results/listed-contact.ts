import type { Locator } from '../mesh/locate.ts';
import type { SiteProbes } from '../model/site-probes.ts';
import type { Plane } from './best-fit-plane.ts';
import type { ContactForce } from './contact-force.ts';
import { deflectionReader } from './deflection-reader.ts';

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
  const deflection = deflectionReader(locator, u);
  let [least, most, sum] = [Infinity, -Infinity, 0];
  for (const [px, py, preload] of points) {
    const force = Math.max(0, start(preload) + slope * (deflection(px, py) - a - bx * px - by * py));
    least = Math.min(least, force);
    most = Math.max(most, force);
    sum += force;
  }
  return { minimum: least, mean: sum / points.length, spread: most - least, compression: least / Math.abs(slope) };
}
