import type { Site } from '@flathead/solver';
import { type HeadModel, type Point, screws } from '@flathead/solver';
import { linkedPlaces, mirrorLink, unlinked } from './mirror.ts';
import { clampInside, planOutlines } from './plan-outline.ts';
import type { Workbench } from './workbench.ts';

/** Grid that a dragged fastener keeps to, mm. */
const SNAP = 0.1;

function snapped([x, y]: Point): Point {
  const snap = (value: number): number => Math.round(value / SNAP) / (1 / SNAP);
  return [snap(x), snap(y)];
}

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

/** A fastener being moved, with its partners if linked. */
export interface FastenerMove {
  /** Pulls it to a point; it goes to the nearest place on the grid and on the head. */
  to(point: Point): void;
  end(): void;
  cancel(): void;
}

/** Least distance from the edge of the head when nothing is known of the bearing, mm. */
const LEAST_INSET = 0.1;

/** Begins to move a fastener; until it ends, answers are live and undo takes it all back as one step. */
export function beginFastenerMove(
  { head, history, pointer }: Pick<Workbench, 'head' | 'history' | 'pointer'>,
  index: number,
  mirror: boolean,
): FastenerMove {
  const { model } = head.getState();
  const { bearing, screw } = model.fasteners[index];
  const disc = bearing ?? (screw === undefined ? undefined : screws[screw]?.bearing) ?? 0;
  const inset = Math.max(LEAST_INSET, disc / 2 + SNAP);
  const outlines = planOutlines(model);
  const places = model.fasteners.map(({ at }): Point => [at[0], at[1]]);
  const { origin = [0, 0] } = model.sites;
  const link = mirror ? mirrorLink(places, index, [origin[0], origin[1]]) : unlinked(index);
  const gesture = history.begin();
  pointer.setState({ dragged: index });
  const over = (how: 'end' | 'cancel') => (): void => {
    gesture[how]();
    pointer.setState({ dragged: null });
  };
  return {
    to: (point) =>
      gesture.change((now) => withFastenersAt(now, linkedPlaces(link, snapped(clampInside(outlines, point, inset))))),
    end: over('end'),
    cancel: over('cancel'),
  };
}
