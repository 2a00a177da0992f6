import type { Point } from './point.ts';

/** Most edges a full circle is given; the sagitta is then 3e-7 of the radius. */
const MOST_EDGES = 4096;

/** Edges in a quarter of a circle, so that no arc rises more than `chord` above its edge: r (1 - cos(half angle)). */
export function quarterEdges(radius: number, chord: number): number {
  const half = Math.acos(Math.max(0, 1 - chord / radius));
  return Math.min(MOST_EDGES / 4, Math.max(3, Math.ceil(Math.PI / (4 * half))));
}

/** Polygon of `4 * quarter` corners with the area of the circle, counter-clockwise from angle zero. */
export function circlePoints([cx, cy]: Point, radius: number, quarter: number): Point[] {
  const n = 4 * quarter;
  const r = radius * Math.sqrt((2 * Math.PI) / (n * Math.sin((2 * Math.PI) / n)));
  return Array.from({ length: n }, (_, i) => {
    const [c, s] = quarterTurn(i, quarter);
    return [cx + r * c, cy + r * s];
  });
}

/**
 * Quarter circle that starts at `turn` right angles, as `quarter` edges with the area of the true sector.
 *
 * Both end points stay on the true circle, where the straight sides join; the ones between lie at the radius q that
 * makes the fan of triangles as large as the sector: sin(a) (2 r q + (quarter - 2) q^2) / 2 = pi r^2 / 4.
 */
export function quarterPoints([cx, cy]: Point, radius: number, turn: number, quarter: number): Point[] {
  const target = Math.PI / (2 * Math.sin(Math.PI / (2 * quarter)));
  const q = target / (1 + Math.sqrt(1 + (quarter - 2) * target));
  return Array.from({ length: quarter + 1 }, (_, i) => {
    const r = i === 0 || i === quarter ? radius : q * radius;
    const [c, s] = quarterTurn(turn * quarter + i, quarter);
    return [cx + r * c, cy + r * s];
  });
}

/** Cosine and sine of i / quarter right angles, mirrored exactly from the first octant. */
function quarterTurn(i: number, quarter: number): Point {
  const turn = Math.floor(i / quarter) % 4;
  const step = i % quarter;
  const low = Math.min(step, quarter - step);
  const angle = (Math.PI / 2) * (low / quarter);
  const [near, far] = 2 * low === quarter ? [Math.SQRT1_2, Math.SQRT1_2] : [Math.cos(angle), Math.sin(angle)];
  const [c, s] = step === low ? [near, far] : [far, near];
  return turn === 0 ? [c, s] : turn === 1 ? [-s, c] : turn === 2 ? [-c, -s] : [s, -c];
}
