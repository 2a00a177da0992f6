import type { HeadModel, Region } from '@flathead/solver';
import { headParts, insideRegion, type Mesh, siteLayout } from '@flathead/solver';

/** A part of the head as the stage draws it. */
export interface HeadLayer {
  readonly part: 'body' | 'frame';
  /** `[n]` triangles of the plate mesh that it covers. */
  readonly triangles: Uint32Array;
  /** Heights of its faces over the middle of the body, mm. */
  readonly bottom: number;
  readonly top: number;
}

/** Chord of the rings that sort triangles; their edges are those of the mesh but for arcs, mm. */
const CHORD = 0.02;

/** Body, frame and ribs as layers over the triangles of the mesh, each to scale in thickness; the body first. */
export function headLayers(model: HeadModel, mesh: Mesh): HeadLayer[] {
  const { body, frameParts } = headParts(model, siteLayout(model.sites), CHORD);
  const half = model.body.thickness / 2;
  const side = model.frame?.side ?? 'board';
  const inBody = coverage(mesh, body);
  const layer = (part: HeadLayer['part'], covered: Uint8Array, bottom: number, top: number): HeadLayer => {
    const triangles = Uint32Array.from(covered.keys()).filter((t) => covered[t] === 1);
    return { part, triangles, bottom, top };
  };
  const framing = frameParts.flatMap(({ region, thickness: t }) => {
    const covered = coverage(mesh, region);
    if (side === 'board') return [layer('frame', covered, -half - t, -half)];
    if (side === 'device') return [layer('frame', covered, half, half + t)];
    // Half of a level frame lies on either face of the body; beside the body it is whole.
    const onBody = covered.map((inside, i) => inside & inBody[i]);
    const beside = covered.map((inside, i) => inside & ~inBody[i] & 1);
    return [
      layer('frame', onBody, half, half + t / 2),
      layer('frame', onBody, -half - t / 2, -half),
      layer('frame', beside, -t / 2, t / 2),
    ];
  });
  return [layer('body', inBody, -half, half), ...framing].filter(({ triangles }) => triangles.length > 0);
}

/** `[nTriangles]` 1 where the middle of the triangle lies in the region. */
function coverage({ x, y, triangles }: Mesh, region: Region): Uint8Array {
  const covered = new Uint8Array(triangles.length / 3);
  for (let t = 0; t < covered.length; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    covered[t] = insideRegion(region, (x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3) ? 1 : 0;
  }
  return covered;
}
