import type { Point, Ring } from '@flathead/solver';

/**
 * Parallel strokes at 45 degrees inside a ring, by even-odd crossings.
 *
 * @returns start and end of each stroke in turn
 */
export function hatchStrokes(ring: Ring, spacing: number): Point[] {
  // Along the strokes u = (x + y) / sqrt 2 runs, across them v = (y - x) / sqrt 2.
  const turned = ring.map(([x, y]): Point => [(x + y) * Math.SQRT1_2, (y - x) * Math.SQRT1_2]);
  const vs = turned.map(([, v]) => v);
  const strokes: Point[] = [];
  if (ring.length === 0) return strokes;
  const last = Math.max(...vs);
  for (let v = Math.ceil(Math.min(...vs) / spacing) * spacing + spacing / 7; v < last; v += spacing) {
    const crossings = turned
      .flatMap(([ua, va], i) => {
        const [ub, vb] = turned[(i + 1) % turned.length];
        return va <= v === vb <= v ? [] : [ua + ((ub - ua) * (v - va)) / (vb - va)];
      })
      .sort((a, b) => a - b);
    for (const u of crossings) strokes.push([(u - v) * Math.SQRT1_2, (u + v) * Math.SQRT1_2]);
  }
  return strokes;
}
