import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform numbers in [0, 1), the same for the same seed. */
export function uniform(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => (generator.next() >>> 0) / 2 ** 32;
}

/** `[3 * n]` points in a box of the given sides about the origin. */
export function randomPoints(seed: number, n: number, sides: readonly [number, number, number]): Float64Array {
  const random = uniform(seed);
  return Float64Array.from({ length: 3 * n }, (_, i) => (random() - 0.5) * sides[i % 3]);
}

/** `[3 * n]` points over a rectangle of 60 x 30 at the given height. */
export function surface(seed: number, n: number, height: (x: number, y: number) => number): Float64Array {
  const points = randomPoints(seed, n, [60, 30, 0]);
  for (let i = 0; i < n; i++) points[3 * i + 2] = height(points[3 * i], points[3 * i + 1]);
  return points;
}

/** Every point p as `A p + shift`, A row-major. */
export function moved(points: Float64Array, A: readonly number[], shift: readonly number[] = [0, 0, 0]): Float64Array {
  return Float64Array.from(points, (_, k) => {
    const [i, row] = [k - (k % 3), k % 3];
    return A[3 * row] * points[i] + A[3 * row + 1] * points[i + 1] + A[3 * row + 2] * points[i + 2] + shift[row];
  });
}

/** Rotation matrix of Tait-Bryan angles about x, y and z, row-major. */
export function rotation(a: number, b: number, c: number): number[] {
  const [sa, ca, sb, cb, sc, cc] = [a, b, c].flatMap((angle) => [Math.sin(angle), Math.cos(angle)]);
  return [
    ...[cb * cc, sa * sb * cc - ca * sc, ca * sb * cc + sa * sc],
    ...[cb * sc, sa * sb * sc + ca * cc, ca * sb * sc - sa * cc],
    ...[-sb, sa * cb, ca * cb],
  ];
}
