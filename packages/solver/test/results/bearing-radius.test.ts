import { describe, expect, it } from 'vitest';
import { coveredBy, discsOver, equivalentRadius } from '../../src/results/bearing-stress.ts';

describe('equivalent radius of a bearing', () => {
  it('is that of a wide disc, and of a narrow one on a thick plate 0.325 t at least (Roark, Table 11.2)', () => {
    expect(equivalentRadius(3, 4)).toBe(3);
    expect(equivalentRadius(2, 4)).toBe(2);
    expect(equivalentRadius(0, 4)).toBeCloseTo(0.325 * 4, 12);
    // sqrt(1.6 * 1 + 16) - 2.7
    expect(equivalentRadius(1, 4)).toBeCloseTo(4.195235 - 2.7, 6);
    // Continuous at t/2 within the digits of the formula.
    expect(equivalentRadius(1.9999999, 4)).toBeCloseTo(2, 1);
  });
});

describe('discs of bearings', () => {
  const mesh = {
    x: Float64Array.of(10, 12, 10, 14, 20),
    y: Float64Array.of(5, 5, 7, 5, 5),
    triangles: Uint32Array.of(0, 1, 2, 1, 3, 2, 3, 4, 2, 4, 3, 3),
    region: new Uint32Array(4),
    boundary: new Uint32Array(0),
    minAngle: 1,
  };
  const bearing = (x: number, y: number, radius: number) => ({
    ...{ fastener: 0, ring: [], radius },
    at: [x, y] as [number, number],
  });

  it('hold the nodes nearer than their radius, and cover the triangles that have one', () => {
    const discs = discsOver(mesh, [bearing(10, 5, 2), bearing(20, 5, 1)]);
    // The nodes 2 mm off lie on the rim.
    expect([...discs]).toEqual([0, -1, -1, -1, 1]);
    expect([...coveredBy(mesh, discs)]).toEqual([0, -1, 1, 1]);
    expect([...discsOver(mesh, [bearing(10, 5, 2.1)])]).toEqual([0, 0, 0, -1, -1]);
    expect([...discsOver(mesh, [])]).toEqual([-1, -1, -1, -1, -1]);
  });
});
