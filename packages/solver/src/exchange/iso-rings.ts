import type { Mesh } from '../mesh/mesh.ts';

type XY = readonly [number, number];

/**
 * Rings around the part of a mesh where a nodal field, linear in each triangle, is at least a level: counter-clockwise
 * outside, clockwise around holes. Sides that two triangles share go round it both ways and cancel.
 *
 * @param value `[nNodes]`
 */
export function isoRings(
  { x, y, triangles }: Pick<Mesh, 'x' | 'y' | 'triangles'>,
  value: Float64Array,
  level: number,
): XY[][] {
  const n = x.length;
  const points: XY[] = [];
  const crossings = new Map<number, number>();
  /** Where the level crosses the side between two nodes, numbered behind the nodes. */
  const crossing = (a: number, b: number): number => {
    const [low, high] = a < b ? [a, b] : [b, a];
    const key = low * n + high;
    const known = crossings.get(key);
    if (known !== undefined) return known;
    const s = (level - value[low]) / (value[high] - value[low]);
    points.push([x[low] + s * (x[high] - x[low]), y[low] + s * (y[high] - y[low])]);
    crossings.set(key, n + points.length - 1);
    return n + points.length - 1;
  };
  const sides = new Map<string, readonly [number, number]>();
  const addSide = (a: number, b: number): void => {
    if (!sides.delete(`${b} ${a}`)) sides.set(`${a} ${b}`, [a, b]);
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const corners: number[] = [];
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[t + k], triangles[t + ((k + 1) % 3)]];
      const [inA, inB] = [value[a] >= level, value[b] >= level];
      if (inA) corners.push(a);
      if (inA !== inB) corners.push(crossing(a, b));
    }
    corners.forEach((from, k) => {
      const to = corners[(k + 1) % corners.length];
      if (from !== to) addSide(from, to);
    });
  }
  const place = (id: number): XY => (id < n ? [x[id], y[id]] : points[id - n]);
  return chained([...sides.values()]).map((ring) => ring.map(place));
}

/** Sides end to end. */
function chained(sides: readonly (readonly [number, number])[]): number[][] {
  const next = new Map<number, number[]>();
  for (const [a, b] of sides) {
    const out = next.get(a);
    if (out === undefined) next.set(a, [b]);
    else out.push(b);
  }
  const rings: number[][] = [];
  for (const [start] of sides) {
    const ring: number[] = [];
    for (let at = start; ; ) {
      const to = next.get(at)?.pop();
      if (to === undefined) break;
      ring.push(at);
      at = to;
    }
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
}
