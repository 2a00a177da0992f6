import { describe, expect, it } from 'vitest';
import { minimumZone } from '../../src/results/minimum-zone.ts';
import { moved, randomPoints, rotation, surface, uniform } from './point-sets.ts';

type Vector = readonly [number, number, number];
const at = (points: Float64Array, i: number): Vector => [points[3 * i], points[3 * i + 1], points[3 * i + 2]];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Range of all points along a direction. */
function rangeAlong(points: Float64Array, direction: Vector): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < points.length / 3; i++) {
    const height = dot(direction, minus(at(points, i), at(points, 0)));
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  return (high - low) / Math.sqrt(dot(direction, direction));
}

/**
 * Width by its definition: a slab that can't be narrowed touches the points with a vertex and a face, or with two
 * edges, so the least range along the normals of all triples and of all pairs of pairs is the width.
 */
function bruteForce(points: Float64Array): number {
  const n = points.length / 3;
  let least = Infinity;
  const pairs = Array.from({ length: n }, (_, i) => Array.from({ length: i }, (_, j) => [i, j] as const)).flat();
  for (const [i, j] of pairs)
    for (const [k, l] of pairs) {
      const normal = cross(minus(at(points, i), at(points, j)), minus(at(points, k), at(points, l)));
      if (dot(normal, normal) > 0) least = Math.min(least, rangeAlong(points, normal));
    }
  return least;
}

const seeds = Array.from({ length: 50 }, (_, seed) => seed);

describe('minimumZone by construction', () => {
  const a = 0.012;

  it('is 2a for the corners of a square at +-a in turn: two crossing edges', () => {
    expect(minimumZone(Float64Array.of(0, 0, a, 1, 0, -a, 1, 1, a, 0, 1, -a))).toBeCloseTo(2 * a, 15);
  });

  it('is h for a triangle and an apex h above its inside: vertex and face', () => {
    expect(minimumZone(Float64Array.of(0, 0, 0, 40, 0, 0, 0, 30, 0, 12, 9, a))).toBeCloseTo(a, 15);
  });

  it('is 1 for the unit cube and 1/sqrt(3) for the corner it is cut to: faces', () => {
    const cube = Float64Array.from({ length: 24 }, (_, k) => (Math.floor(k / 3) >> (k % 3)) & 1);
    expect(minimumZone(cube)).toBeCloseTo(1, 14);
    expect(minimumZone(Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1))).toBeCloseTo(1 / Math.sqrt(3), 14);
  });

  it('is edge length / sqrt(2) for the regular tetrahedron: opposite edges', () => {
    expect(minimumZone(Float64Array.of(1, 1, 1, 1, -1, -1, -1, 1, -1, -1, -1, 1))).toBeCloseTo(2, 14);
  });

  it('is the rise of a spherical cap of radius R and half-width c: R - sqrt(R^2 - c^2)', () => {
    const [R, c] = [12000, 30];
    const ring = Array.from({ length: 360 }, (_, k) => (k * Math.PI) / 180);
    const points = [1, 0.8, 0.55, 0.3, 0].flatMap((share) =>
      ring.flatMap((angle) => {
        const r = share * c;
        return [r * Math.cos(angle), r * Math.sin(angle), Math.sqrt(R * R - r * r) - R];
      }),
    );
    expect(minimumZone(Float64Array.from(points))).toBeCloseTo(R - Math.sqrt(R * R - c * c), 12);
  });

  it.each([
    ['no point', []],
    ['one point', [3, 4, 5]],
    ['one point many times', [3, 4, 5, 3, 4, 5, 3, 4, 5, 3, 4, 5, 3, 4, 5]],
    ['three points', [0, 0, 1, 7, 0, -2, 1, 5, 3]],
    ['a line in space', [0, 0, 0, 1, 2, 0.1, 2, 4, 0.2, 3, 6, 0.3, 5, 10, 0.5]],
    [
      'a bent line over one line in the xy plane, which an upright plane holds',
      [0, 0, 0, 1, 2, 5, 2, 4, -3, 3, 6, 1, 5, 10, 2],
    ],
    ['a level plane', [0, 0, 7, 1, 0, 7, 1, 1, 7, 0, 1, 7, 0.3, 0.4, 7]],
    ['an upright line', [1, 1, 0, 1, 1, 1, 1, 1, 2, 1, 1, 3]],
  ])('is 0 for %s', (_, points) => {
    expect(minimumZone(Float64Array.from(points))).toBe(0);
  });

  it('is 0 for a tilted plane far from the origin', () => {
    const plane = surface(3, 500, (x, y) => 250 + 0.013 * x - 0.0271 * y);
    expect(minimumZone(moved(plane, [1, 0, 0, 0, 1, 0, 0, 0, 1], [400, -300, 0]))).toBe(0);
  });
});

describe('minimumZone against every vertex-face and edge-edge pair', () => {
  it.each(seeds)('agrees on a flat set, seed %i', (seed) => {
    const points = randomPoints(seed, 8, [60, 30, 0.04]);
    expect(minimumZone(points) / bruteForce(points)).toBeCloseTo(1, 11);
  });

  it.each(seeds)('agrees on a bowed set with ties, seed %i', (seed) => {
    const random = uniform(seed);
    const [p, q, r] = [random() - 0.5, random() - 0.5, random() - 0.5];
    const grid = Array.from({ length: 9 }, (_, i) => [(i % 3) - 1, Math.floor(i / 3) - 1]);
    const points = Float64Array.from(
      grid.flatMap(([x, y]) => [20 * x, 14 * y, 0.03 * (p * x * x + q * y * y + r * x * x * y * y)]),
    );
    expect(minimumZone(points) / bruteForce(points)).toBeCloseTo(1, 11);
  });

  it.each(seeds)('agrees on a steep set, seed %i', (seed) => {
    const points = moved(randomPoints(seed, 8, [60, 30, 2]), rotation(0.9, -0.6, 0.2));
    expect(minimumZone(points) / bruteForce(points)).toBeCloseTo(1, 11);
  });

  it.each(seeds)('agrees on a chunky set, seed %i', (seed) => {
    const points = randomPoints(seed, 8, [1, 1, 1]);
    expect(minimumZone(points) / bruteForce(points)).toBeCloseTo(1, 11);
  });
});

describe('minimumZone of a plate field', () => {
  const bowl = surface(11, 2000, (x, y) => 0.03 * Math.cos(x / 14) * Math.cos(y / 9 + 0.3) + 1e-4 * x * y);
  const width = minimumZone(bowl);

  it('does not change when the set is turned, moved or mirrored', () => {
    expect(minimumZone(moved(bowl, rotation(0.3, -0.2, 1.1), [100, -20, 5])) / width).toBeCloseTo(1, 9);
    expect(minimumZone(moved(bowl, [1, 0, 0, 0, -1, 0, 0, 0, -1])) / width).toBeCloseTo(1, 12);
  });

  it('scales with the set', () => {
    for (const s of [1e-9, 1e9]) expect(minimumZone(bowl.map((v) => s * v)) / (s * width)).toBeCloseTo(1, 12);
  });

  it('does not depend on the order of the points', () => {
    const reversed = Float64Array.from(bowl, (_, k) => bowl[bowl.length - 3 - (k - (k % 3)) + (k % 3)]);
    expect(minimumZone(reversed) / width).toBeCloseTo(1, 13);
  });

  it('shrinks by the cosine of a tilt b that is added along z', () => {
    // Adding b x to z shears the set: vertical gaps stay, distances between the planes shrink by about 1/sqrt(1 + b^2).
    const tilted = bowl.map((v, k) => (k % 3 === 2 ? v + 0.02 * bowl[k - 2] : v));
    expect(minimumZone(tilted) / width).toBeCloseTo(1 / Math.sqrt(1 + 0.02 ** 2), 4);
    expect(minimumZone(bowl.map((v, k) => (k % 3 === 2 ? v + 1e-6 * bowl[k - 2] : v))) / width).toBeCloseTo(1, 8);
  });

  it('is no wider than the range along any direction', () => {
    const random = uniform(12);
    for (let k = 0; k < 200; k++) {
      const direction: Vector = [0.02 * (random() - 0.5), 0.02 * (random() - 0.5), 1];
      expect(width).toBeLessThanOrEqual(rangeAlong(bowl, direction));
    }
  });

  it('answers 5,000 smooth points in a live frame', () => {
    const heights = {
      dome: (x: number, y: number) => -3e-5 * (x * x + y * y),
      saddle: (x: number, y: number) => 1e-5 * (x * x - 2 * y * y + 0.3 * x * y) + 1e-3 * x,
      wave: (x: number, y: number) => 0.03 * Math.cos(x / 7) * Math.cos(y / 5),
    };
    for (const [name, height] of Object.entries(heights)) {
      const times = [5000, 10000].map((n) => {
        const points = surface(n, n, height);
        let best = Infinity;
        for (let run = 0; run < 12; run++) {
          const start = performance.now();
          minimumZone(points);
          best = Math.min(best, performance.now() - start);
        }
        return best;
      });
      console.info(`minimumZone, ${name}: 5k points ${times[0].toFixed(2)} ms, 10k points ${times[1].toFixed(2)} ms`);
      expect(times[0]).toBeLessThan(5);
    }
  });
});
