import type { CompiledHead } from '../model/compile.ts';
import type { PlateSolution } from '../structure/solution.ts';
import type { Structure } from '../structure/structure.ts';
import { areaPoints } from './area-points.ts';
import { bestFitPlane } from './best-fit-plane.ts';
import { largestDeviation } from './bow.ts';
import { flatness } from './flatness.ts';
import type { CaseResult, FastenerResult } from './head-result.ts';
import { minimumZone } from './minimum-zone.ts';
import type { SampleArea } from './sample-areas.ts';

/**
 * Sites whose bow is within this of the largest share it, and the first of them gives its name: on a symmetric head the
 * mesh would otherwise decide between mirror images.
 */
const TIE = 1e-3;

/**
 * Everything measured on one load case of a head: bow against the fastener plane, flatness and tilt of the site area,
 * the same per site, and what each fastener carries.
 *
 * @param areas one for each site, in the order of `head.sites`
 */
export function headCase(
  name: string,
  head: CompiledHead,
  structure: Structure,
  solved: PlateSolution,
  areas: readonly SampleArea[],
): CaseResult {
  const { mesh } = structure;
  const { u } = solved;
  const fasteners = head.fasteners.map(
    ({ name, at, stiffness }, i): FastenerResult => ({
      name,
      at,
      reaction: solved.reactions[i],
      w: solved.seats[i],
      holds: !solved.letGo.has(i),
      stiffness,
    }),
  );
  const seats = fasteners.filter(({ holds }) => holds);
  const plane = bestFitPlane(Float64Array.from(seats.flatMap(({ at, w }) => [...at, w])));
  const w = new Float64Array(mesh.x.length);
  const deviation = new Float64Array(mesh.x.length);
  for (let i = 0; i < w.length; i++) {
    w[i] = u[3 * i];
    deviation[i] = w[i] - plane.a - plane.bx * mesh.x[i] - plane.by * mesh.y[i];
  }
  const sites = areas.map((area) => {
    const { value, at } = largestDeviation(mesh, u, plane, area.triangles);
    return { name: area.name, bow: value, at, flatness: minimumZone(areaPoints(mesh, u, [area])) };
  });
  const largest = sites.reduce((a, b) => (Math.abs(b.bow) > Math.abs(a.bow) ? b : a)).bow;
  const worst = sites.find((site) => Math.abs(site.bow) >= (1 - TIE) * Math.abs(largest))!;
  const siteArea = areaPoints(mesh, u, areas);
  const { bx, by } = bestFitPlane(siteArea);
  return {
    name,
    w,
    deviation,
    fastenerPlane: [plane.a, plane.bx, plane.by],
    bow: { value: largest, at: worst.at, site: worst.name },
    flatness: flatness(siteArea),
    tilt: { slope: Math.hypot(bx, by), alongX: bx, alongY: by },
    sites,
    fasteners,
    load: solved.load,
    reaction: solved.reactions.reduce((sum, force) => sum + force, 0),
    residual: solved.residual,
  };
}
