import { distanceToRing, insideRing, type Point, type Ring } from '@flathead/solver';

/** Least distance between two closed outlines, mm; 0 where they meet or one lies in the other. */
export function ringGap(a: Ring, b: Ring): number {
  if (a.length === 0 || b.length === 0) return Infinity;
  if (insideRing(a, ...xy(b[0])) || insideRing(b, ...xy(a[0])) || crosses(a, b)) return 0;
  const least = (from: Ring, to: Ring) => Math.min(...from.map(([x, y]) => distanceToRing(to, x, y)));
  return Math.min(least(a, b), least(b, a));
}

function crosses(a: Ring, b: Ring): boolean {
  const side = (p: Point, q: Point, r: Point) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return a.some((p, i) => {
    const q = a[(i + 1) % a.length];
    return b.some((r, j) => {
      const s = b[(j + 1) % b.length];
      return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;
    });
  });
}

function xy([x, y]: Point): [number, number] {
  return [x, y];
}
