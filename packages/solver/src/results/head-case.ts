import type { Mesh } from '../mesh/mesh.ts';
import type { CompiledHead } from '../model/compile.ts';
import type { HeadLoadCase } from '../model/load-cases.ts';
import { isLoaded } from '../model/loads.ts';
import type { SolvedCase } from '../structure/groups.ts';
import { areaPoints } from './area-points.ts';
import { bestFitPlane, type Plane } from './best-fit-plane.ts';
import { largestDeviation } from './bow.ts';
import { siteContact, siteForce } from './contact.ts';
import { flatness } from './flatness.ts';
import type { CaseResult, CaseStrength, FastenerResult } from './head-result.ts';
import { jointUnder } from './joint.ts';
import { minimumZone } from './minimum-zone.ts';
import type { SampleArea } from './sample-areas.ts';
import { seatResults } from './seats.ts';

/**
 * Sites whose bow is within this of the largest share it, and the first of them gives its name: on a symmetric head the
 * mesh would otherwise decide between mirror images.
 */
const TIE = 1e-3;

/**
 * Everything measured on one load case of a head: bow against the fastener plane, flatness and tilt of the site area,
 * the same per site with the contact force left, and what each fastener and seat carries.
 *
 * @param areas one for each site, in the order of `head.sites`
 * @param strength of the same case, where it was asked for
 */
export function headCase(
  load: HeadLoadCase,
  head: CompiledHead,
  { structure: { mesh, locator }, solution: solved }: SolvedCase,
  areas: readonly SampleArea[],
  strength: CaseStrength | null,
): CaseResult {
  const { probes } = head;
  const { u } = solved;
  const fasteners = head.fasteners.map(
    ({ name, at, stiffness, terms, joint }, i): FastenerResult => ({
      name,
      at,
      reaction: solved.reactions[i],
      w: solved.seats[i],
      holds: !solved.letGo.has(i),
      stiffness,
      terms,
      joint: joint === null ? null : jointUnder(joint, solved.reactions[i]),
    }),
  );
  const seats = fasteners.filter(({ holds }) => holds);
  const plane = bestFitPlane(Float64Array.from(seats.flatMap(({ at, w }) => [...at, w])));
  const w = deflections(u, mesh.x.length);
  const field = ({ triangles }: SampleArea, i: number) => {
    const { points } = head.siteProbes[i];
    return { mesh, u, triangles, fastenerPlane: plane, listed: points && { locator, points } };
  };
  const sites = areas.map((area, i) => {
    const { value, at } = largestDeviation(mesh, u, plane, area.triangles);
    const measured = { name: area.name, bow: value, at, flatness: minimumZone(areaPoints(mesh, u, [area])) };
    const contact = siteContact(probes, load.touched.has(area.name), field(area, i));
    return contact === null ? measured : { ...measured, contact };
  });
  const pressing = areas.map((area, i) => {
    if (!isLoaded(probes, load, area.name)) return 0;
    const { count, points, preload } = head.siteProbes[i];
    return siteForce(points === null ? probes : { ...probes, count, preload: preload / count }, field(area, i));
  });
  const largest = sites.reduce((a, b) => (Math.abs(b.bow) > Math.abs(a.bow) ? b : a)).bow;
  const worst = sites.find((site) => Math.abs(site.bow) >= (1 - TIE) * Math.abs(largest))!;
  const siteArea = areaPoints(mesh, u, areas);
  const level = bestFitPlane(siteArea);
  const { bx, by } = level;
  return {
    name: load.name,
    ...(load.family === null ? {} : { family: load.family }),
    w,
    deviation: deviations(mesh, w, plane),
    fastenerPlane: [plane.a, plane.bx, plane.by],
    bow: { value: largest, at: worst.at, site: worst.name },
    flatness: flatness(siteArea, level),
    tilt: { slope: Math.hypot(bx, by), alongX: bx, alongY: by },
    sites,
    fasteners,
    seats: seatResults(head, solved),
    strength,
    load: probes.relax ? pressing.reduce((sum, force) => sum + force, 0) : solved.load,
    reaction: solved.reactions.reduce((sum, force) => sum + force, 0),
    residual: solved.residual,
  };
}

// Loops over nodes stand in functions of their own, which an engine compiles for good in the first frames of a drag.

/** `[nNodes]` w out of `[3 * nNodes]` w, thetaX, thetaY. */
function deflections(u: Float64Array, count: number): Float64Array {
  const w = new Float64Array(count);
  for (let i = 0; i < count; i++) w[i] = u[3 * i];
  return w;
}

/** `[nNodes]` deviation of w from a plane. */
function deviations({ x, y }: Mesh, w: Float64Array, { a, bx, by }: Plane): Float64Array {
  const deviation = new Float64Array(w.length);
  for (let i = 0; i < w.length; i++) deviation[i] = w[i] - a - bx * x[i] - by * y[i];
  return deviation;
}
