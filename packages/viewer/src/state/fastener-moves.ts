import type { Site } from '@flathead/solver';
import { type HeadModel, type Point, screws } from '@flathead/solver';
import { pointOnGrid } from './grid.ts';
import { linkedPlaces, type MirrorAxes, mirrorLink, unlinked } from './mirror.ts';
import { clampInside, planOutlines } from './plan-outline.ts';
import type { StageEdit } from './stage-move.ts';

/** The model with some fasteners elsewhere: `[index, place]` each. The same model when nothing moves. */
function withFastenersAt(model: HeadModel, places: readonly (readonly [number, Point])[]): HeadModel {
  const moved = new Map(
    places.filter(([index, [x, y]]) => {
      const [x0, y0] = model.fasteners[index].at;
      return x !== x0 || y !== y0;
    }),
  );
  if (moved.size === 0) return model;
  const fasteners = model.fasteners.map((fastener, index) => {
    const place = moved.get(index);
    return place ? { ...fastener, at: [place[0], place[1]] satisfies [number, number] } : fastener;
  });
  return { ...model, fasteners };
}

/** The site whose field is nearest to a point, and how far its edge is, mm; zero inside. */
export function nearestSite(
  sites: readonly Site[],
  [x, y]: Point,
): { readonly site: Site; readonly distance: number } | null {
  let nearest: { site: Site; distance: number } | null = null;
  for (const site of sites) {
    const dx = Math.max(0, Math.abs(x - site.centre[0]) - site.field[0] / 2);
    const dy = Math.max(0, Math.abs(y - site.centre[1]) - site.field[1] / 2);
    const distance = Math.hypot(dx, dy);
    if (nearest === null || distance < nearest.distance) nearest = { site, distance };
  }
  return nearest;
}

/** Least distance from the edge of the head when nothing is known of the bearing, mm. */
const LEAST_INSET = 0.1;

/** Pulls a fastener, with its partners where linked, to the nearest place on the grid and on the head. */
export function fastenerEdit(start: HeadModel, index: number, axes: MirrorAxes | null): StageEdit {
  const { bearing, screw } = start.fasteners[index];
  const disc = bearing ?? (screw === undefined ? undefined : screws[screw]?.bearing) ?? 0;
  const inset = Math.max(LEAST_INSET, disc / 2 + LEAST_INSET);
  const outlines = planOutlines(start);
  const places = start.fasteners.map(({ at }): Point => [at[0], at[1]]);
  const { origin = [0, 0] } = start.sites;
  const link = axes === null ? unlinked(index) : mirrorLink(places, index, [origin[0], origin[1]], axes);
  return (now, point, grid) =>
    withFastenersAt(now, linkedPlaces(link, pointOnGrid(clampInside(outlines, point, inset), grid)));
}
