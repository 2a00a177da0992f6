import { describe, expect, it } from 'vitest';
import { peaks } from '../../src/results/peaks.ts';

const mesh = (places: readonly (readonly [number, number])[]) => ({
  ...{ triangles: new Uint32Array(0), region: new Uint32Array(0), boundary: new Uint32Array(0), minAngle: 0 },
  x: Float64Array.from(places, ([x]) => x),
  y: Float64Array.from(places, ([, y]) => y),
});

describe('places where a field is nearly largest', () => {
  const corners: [number, number][] = [
    [0, 0],
    [10, 0],
    [10, 6],
    [0, 6],
  ];
  const largest = { value: 10, at: [0, 0] as [number, number] };

  it('are the largest first, then each farthest from those before', () => {
    expect(peaks(mesh(corners), [10, 9.9, 9.9, 9.9], largest, 0.02)).toEqual([
      [0, 0],
      [10, 6],
      [10, 0],
      [0, 6],
    ]);
  });

  it('are within the share of it, and none but itself where it stands alone', () => {
    expect(peaks(mesh(corners), [10, 9.8, 9.79, 5], largest, 0.02)).toEqual([
      [0, 0],
      [10, 0],
    ]);
    expect(peaks(mesh(corners), [10, 1, 1, 1], largest, 0.02)).toEqual([[0, 0]]);
  });

  it('count as one when nearer than a fifth of the farthest, and are eight at most', () => {
    const row = (...xs: number[]) => mesh(xs.map((x) => [x, 0]));
    expect(peaks(row(0, 1.9, 10), [10, 10, 10], largest, 0.02)).toEqual([
      [0, 0],
      [10, 0],
    ]);
    expect(peaks(row(0, 2.1, 10), [10, 10, 10], largest, 0.02)).toHaveLength(3);
    const ring = Array.from({ length: 40 }, (_, i): [number, number] => [Math.cos(i / 6.4), Math.sin(i / 6.4)]);
    expect(
      peaks(
        mesh(ring),
        ring.map(() => 10),
        { value: 10, at: ring[0] },
        0.02,
      ),
    ).toHaveLength(8);
  });
});
