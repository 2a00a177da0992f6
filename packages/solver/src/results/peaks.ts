import type { Point } from '../geometry/point.ts';
import type { Mesh } from '../mesh/mesh.ts';

/** Places told apart, at most. */
const MOST = 8;

/** Places nearer to each other than this share of the farthest pair's distance are one. */
const APART = 0.2;

/**
 * Places where a field is within a share of its largest value, the largest first, each as far as can be from those
 * before. On a ring, or between mirror images, the mesh alone decides which is largest; a mesh refined for that one
 * place leaves the others to be largest next time.
 *
 * @param value `[nNodes]`
 * @param largest where and how large
 * @param share relative, of the largest value
 */
export function peaks(
  { x, y }: Mesh,
  value: ArrayLike<number>,
  largest: { readonly value: number; readonly at: Point },
  share: number,
): Point[] {
  const near = Array.from(x.keys()).filter((i) => value[i] >= (1 - share) * largest.value);
  const distance = near.map((i) => Math.hypot(x[i] - largest.at[0], y[i] - largest.at[1]));
  const first = Math.max(0, ...distance);
  const found: Point[] = [largest.at];
  while (found.length < MOST) {
    const far = distance.reduce((best, d, k) => (d > distance[best] ? k : best), 0);
    if (!(distance[far] > APART * first)) break;
    const i = near[far];
    found.push([x[i], y[i]]);
    near.forEach((j, k) => {
      distance[k] = Math.min(distance[k], Math.hypot(x[j] - x[i], y[j] - y[i]));
    });
  }
  return found;
}
