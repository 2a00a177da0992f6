import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { type Arrangement, arrange } from '../../src/mesh/arrangement.ts';

const box = (x: number, y: number, width: number, height: number): Ring =>
  shapeRing({ rectangle: [width, height], centre: [x, y] }, { chord: 1 });
const plate = [box(0, 0, 100, 60)];
const exact = () => 0;

/** Length of all segments that bound the ring of the given number, 0 the outline. */
function lengthOf({ x, y, segments, bounds }: Arrangement, ring: number): number {
  return bounds.reduce((total, uses, s) => {
    const [a, b] = [segments[2 * s], segments[2 * s + 1]];
    return uses.some((used, i) => i % 2 === 0 && used === ring) ? total + Math.hypot(x[b] - x[a], y[b] - y[a]) : total;
  }, 0);
}

describe('arrangement', () => {
  it('splits at crossings and where an end lies on an edge', () => {
    const crossing = arrange({ outline: plate, regions: [box(0, 0, 20, 20), box(10, 10, 20, 20)] }, exact);
    expect(crossing.bounds.length).toBe(4 + 8 + 4);
    const standing = arrange({ outline: plate, regions: [box(0, 0, 20, 20), box(0, 19, 6, 18)] }, exact);
    // The foot of the second splits the upper side of the first in three, the middle part bounding both.
    expect(standing.bounds.length).toBe(4 + 6 + 3);
    expect(lengthOf(standing, 1)).toBe(80);
    expect(lengthOf(standing, 2)).toBe(48);
  });

  it('keeps shared edges once, knowing both rings', () => {
    const { bounds } = arrange({ outline: plate, regions: [box(0, 0, 20, 20), box(20, 0, 20, 20)] }, exact);
    expect(bounds.length).toBe(4 + 7);
    expect(bounds.filter((uses) => uses.length === 4).length).toBe(1);
  });

  it('keeps nothing twice when regions equal the outline and each other', () => {
    const { bounds, x } = arrange({ outline: plate, regions: [plate[0], box(0, 0, 100, 60)] }, exact);
    expect(x.length).toBe(4);
    expect(bounds.length).toBe(4);
    expect(bounds.every((uses) => uses.length === 6)).toBe(true);
  });

  it('leaves the outline where it is and moves regions to it', () => {
    const { x, y, bounds } = arrange({ outline: plate, regions: [box(25, 0, 49.99, 59.99)] }, () => 0.02);
    expect(Math.max(...x)).toBe(50);
    expect(Math.max(...y)).toBe(30);
    // Ring of four corners, three of its sides on the outline.
    expect(bounds.length).toBe(4 + 2 + 1);
    expect(x.length).toBe(6);
  });

  it('closes a gap below the tolerance and keeps one above it', () => {
    const gap = (width: number) =>
      arrange({ outline: plate, regions: [box(-10, 0, 20, 20), box(10 + width, 0, 20, 20)] }, () => 0.01).bounds.length;
    expect(gap(0.009)).toBe(4 + 7);
    expect(gap(0.011)).toBe(4 + 8);
  });

  it('never moves a region by more than a share of its own width', () => {
    const { bounds } = arrange({ outline: plate, regions: [box(0, 0, 0.1, 20), box(0.15, 0, 0.1, 20)] }, () => 1);
    expect(bounds.length).toBe(4 + 8);
  });

  it('splits each side of the outline that a region crosses', () => {
    for (const [x, y] of [
      [50, 3],
      [-50, 3],
      [7, 30],
      [7, -30],
    ]) {
      // biome-ignore format: middles of the four sides
      const { bounds } = arrange({ outline: plate, regions: [box(x, y, 20, 20)] }, exact);
      // The side in three; two sides of the region in two each.
      expect(bounds.length).toBe(4 + 2 + 4 + 2);
    }
  });

  it('joins what crosses nearly in one point', () => {
    const star = Array.from({ length: 6 }, (_, i): Ring => {
      const [c, s] = [Math.cos((Math.PI * i) / 6), Math.sin((Math.PI * i) / 6)];
      const off = 1e-4 * Math.sin(7 * i);
      return shapeRing(
        { polygon: [[-20 * c + off, -20 * s], [20 * c + off, 20 * s], [20 * c - 8 * s, 20 * s + 8 * c]] },
        { chord: 1 },
      ); // biome-ignore format: three corners
    });
    const { x, y } = arrange({ outline: plate, regions: star }, () => 0.01);
    expect(Array.from(x).filter((_, v) => Math.hypot(x[v], y[v]) < 0.01).length).toBe(1);
  });

  it('leaves out rings beside the plate', () => {
    expect(arrange({ outline: plate, regions: [box(200, 0, 20, 20)] }, exact).bounds.length).toBe(4);
  });
});
