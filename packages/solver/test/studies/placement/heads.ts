import type { HeadModel } from '../../../src/model/head-model.ts';
import { checkHeadModel } from '../../../src/model/read.ts';

/** A bare body with one site in the middle, a connector beside it, and room around. */
export const bare = head({
  name: 'Bare',
  body: { outline: { rectangle: [44, 36] }, thickness: 3, material: 'mica-glass-ceramic' },
  sites: { columns: 1, rows: 1, pitch: [10, 10], probes: { count: 150, field: [9, 7], preload: 0.08 } },
  fasteners: [
    { name: 'NW', at: [-18, 14], screw: 'M2', stiffness: 20_000 },
    { name: 'NE', at: [18, 14], screw: 'M2', stiffness: 20_000 },
    { name: 'SW', at: [-18, -14], screw: 'M2', stiffness: 20_000 },
    { name: 'SE', at: [18, -14], screw: 'M2', stiffness: 20_000 },
  ],
  keepOuts: [{ name: 'connector', shape: { rectangle: [12, 6], centre: [0, 13] }, clearance: 0.5 }],
  cases: [{ name: 'mounted' }],
});

/** A framed body of two sites, one of which may be relieved; stiffness from the screw and what it clamps. */
export const framed = head({
  name: 'Framed',
  body: { outline: { rectangle: [46, 30] }, thickness: 3.5, material: 'alumina-96' },
  sites: {
    columns: 2,
    rows: 1,
    pitch: [14, 10],
    probes: { count: 200, field: [7, 8], preload: 0.09, touchdown: 0.2, kind: 'floating' },
  },
  frame: {
    outer: { rectangle: [64, 48] },
    window: { rectangle: [34, 20] },
    material: 'stainless-17-4',
    thickness: 3,
    side: 'board',
    join: 'sliding',
  },
  fasteners: [
    { name: 'NW', at: [-27, 19], screw: 'M2' },
    { name: 'NE', at: [27, 19], screw: 'M2' },
    { name: 'S', at: [0, -19], screw: 'M2' },
  ],
  keepOuts: [{ name: 'capacitors', shape: { circle: 14, centre: [24, -16] }, clearance: 1 }],
  cases: [{ name: 'mounted' }, { name: 'one touched', touched: ['A1'] }],
});

/** Random positions for fasteners of these heads, not on one line and not touching. */
export function randomPoints(
  pick: (low: number, high: number) => number,
  count: number,
  isOpen: (at: readonly [number, number]) => boolean,
): [number, number][] {
  const points: [number, number][] = [];
  for (let attempt = 1; points.length < count; attempt++) {
    if (attempt % 300 === 0) points.length = 0;
    const at: [number, number] = [pick(-31, 31), pick(-23, 23)];
    if (!isOpen(at) || points.some(([x, y]) => Math.hypot(at[0] - x, at[1] - y) < 6)) continue;
    if (points.length === 2) {
      const [[x0, y0], [x1, y1]] = points;
      if (Math.abs((x1 - x0) * (at[1] - y0) - (at[0] - x0) * (y1 - y0)) < 300) continue;
    }
    points.push(at);
  }
  return points;
}

function head(rest: object): HeadModel {
  return checkHeadModel({ flathead: 1, limits: { bow: 0.01, flatness: 0.01 }, mesh: { size: 3 }, ...rest });
}
