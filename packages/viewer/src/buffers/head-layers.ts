import type { HeadModel, Region, Ring } from '@flathead/solver';
import { difference, insideRegion, insideRing, type Mesh, placeRibs, shapeRing, siteLayout } from '../solver-extras.ts';

/** A part of the head as the stage draws it. */
export interface HeadLayer {
  readonly part: 'body' | 'frame';
  /** `[n]` triangles of the plate mesh that it covers. */
  readonly triangles: Uint32Array;
  /** Heights of its faces over the middle of the body, mm. */
  readonly bottom: number;
  readonly top: number;
}

/** Chord of the rings that sort triangles; their edges are those of the mesh but for arcs. */
const CHORD = 0.02;
/** How far the faces of a frame let into the body stand out of it, so that they are seen, mm. */
const PROUD = 0.02;

/** Body, frame and ribs as layers over the triangles of the mesh, each to scale in thickness. */
export function headLayers(model: HeadModel, mesh: Mesh): HeadLayer[] {
  const { body, frame } = model;
  const half = body.thickness / 2;
  const outline = shapeRing(body.outline, { chord: CHORD });
  const openings = (body.openings ?? []).map((shape) => shapeRing(shape, { chord: CHORD }));
  const inBody = sorted(mesh, (x, y) => insideRing(outline, x, y) && !openings.some((ring) => insideRing(ring, x, y)));
  const layers: HeadLayer[] = [{ part: 'body', triangles: inBody, bottom: -half, top: half }];
  if (!frame) return layers;

  const outer = shapeRing(frame.outer, { chord: CHORD });
  const ring = difference([outer], [shapeRing(frame.window, { chord: CHORD })]);
  for (const { thickness, regions } of byThickness(model, outer, ring)) {
    const triangles = sorted(mesh, (x, y) => regions.some((region) => insideRegion(region, x, y)));
    const level = Math.max(thickness / 2, half + PROUD);
    const [bottom, top] =
      frame.side === 'board'
        ? [-half - thickness, -half]
        : frame.side === 'device'
          ? [half, half + thickness]
          : [-level, level];
    layers.push({ part: 'frame', triangles, bottom, top });
  }
  return layers.filter(({ triangles }) => triangles.length > 0);
}

/** Frame and ribs, together where they are of one thickness. */
function byThickness(
  model: HeadModel,
  outer: Ring,
  ring: Region,
): readonly { readonly thickness: number; readonly regions: readonly Region[] }[] {
  const { frame, sites } = model;
  if (!frame) return [];
  const groups = new Map<number, Region[]>([[frame.thickness, [ring]]]);
  for (const { thickness, region } of placeRibs(frame, outer, ring, siteLayout(sites)))
    groups.set(thickness, [...(groups.get(thickness) ?? []), region]);
  return [...groups].map(([thickness, regions]) => ({ thickness, regions }));
}

function sorted({ x, y, triangles }: Mesh, inside: (x: number, y: number) => boolean): Uint32Array {
  const found: number[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    if (inside((x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3)) found.push(t);
  }
  return Uint32Array.from(found);
}
