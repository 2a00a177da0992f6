import type { Mesh } from '../mesh/mesh.ts';
import type { Probes } from '../model/head-model.ts';
import { areaMean } from './area-mean.ts';
import type { Plane } from './best-fit-plane.ts';
import { extremeDeviations } from './bow.ts';
import type { ContactForce } from './contact-force.ts';
import { type ListedProbes, listedForce } from './listed-contact.ts';

/** Contact of the probes of a site at either end; null where there is none, or the model does not give its force. */
export interface SiteContact {
  readonly board: ContactForce | null;
  readonly device: ContactForce | null;
}

/** What a case leaves of the contact of one site. */
export interface ContactField {
  readonly mesh: Mesh;
  /** `[3 * nNodes]` w, thetaX, thetaY */
  readonly u: Float64Array;
  readonly triangles: Uint32Array;
  readonly fastenerPlane: Plane;
  /** Its probes, where the model lists them; anywhere in the field otherwise. */
  readonly listed?: ListedProbes | null;
}

const BOARD: Plane = { a: 0, bx: 0, by: 0 };

/**
 * Contact force left at the ends of the probes of a site, element by element over its field as if probes stood
 * everywhere in it, or probe by probe where they are listed, each with its own preload. A probe is a linear spring without force at no compression. Common practice, no source:
 *
 * - Board end, lip or shoulder carried by the head: `preload - rate w`, with w against the board, which is flat and does
 *   not move.
 * - Floating probes under a device: plunger off the lip, force passes device -> spring -> board, and the distance
 *   between the two is set by the prober: `touchdown` at both ends, however the head bows.
 * - Shouldered probes under a device: the board end as above, a spring of its own; at the device end
 *   `touchdown + rate (deviation from the fastener plane)`, as the prober sets the test height from the plane of the
 *   tips.
 *
 * Friction in the guide holes and the scatter of rate and length from probe to probe are not in it.
 *
 * @returns null when the model does not give the rate
 */
export function siteContact(
  { preload, touchdown, rate, kind }: Probes,
  touched: boolean,
  field: ContactField,
): SiteContact | null {
  if (rate === undefined) return null;
  if (touched && kind !== 'shouldered') {
    if (touchdown === undefined) return { board: null, device: null };
    const even = { minimum: touchdown, mean: touchdown, spread: 0, compression: touchdown / rate };
    return { board: even, device: even };
  }
  const board = along(field, BOARD, preload, -rate, (own) => own);
  if (!touched || touchdown === undefined) return { board, device: null };
  return { board, device: along(field, field.fastenerPlane, touchdown, rate, () => touchdown) };
}

/** Force `start + slope (w - plane)` over the field, never below zero; `startOf` a listed probe by its preload. */
function along(
  { mesh, u, triangles, listed = null }: ContactField,
  plane: Plane,
  start: number,
  slope: number,
  startOf: (preload: number) => number,
): ContactForce {
  if (listed !== null) return listedForce(listed, u, plane, startOf, slope);
  const { min, max } = extremeDeviations(mesh, u, plane, triangles);
  const force = (deviation: number): number => Math.max(0, start + slope * deviation);
  const [low, high] = [force(min.value), force(max.value)];
  const minimum = Math.min(low, high);
  return {
    minimum,
    mean: areaMean(mesh, u, plane, triangles, force),
    spread: Math.abs(high - low),
    compression: minimum / Math.abs(slope),
  };
}

/**
 * What the probes of a site press the head with, N: `count (preload - rate mean w)` where they relax, which is exact,
 * else the whole preload.
 */
export function siteForce({ count, preload, rate, relax }: Probes, { mesh, u, triangles }: ContactField): number {
  const lost = relax && rate !== undefined ? rate * areaMean(mesh, u, BOARD, triangles, (w) => w) : 0;
  return count * (preload - lost);
}
