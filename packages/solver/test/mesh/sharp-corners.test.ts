import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { arrange } from '../../src/mesh/arrangement.ts';
import { sampleSegments } from '../../src/mesh/sample-segments.ts';
import { sharpCorners, splitPlace } from '../../src/mesh/small-angle.ts';
import { triangulate } from '../../src/mesh/triangulate.ts';

/** Corners of triangles of sides cut into pieces of 1, whose corner at (0, 0) opens by so many degrees. */
function wedge(degrees: number) {
  const at = (angle: number): Point => [10 * Math.cos(angle), 10 * Math.sin(angle)];
  const ring: Point[] = [[0, 0], at(0.3), at(0.3 + (degrees * Math.PI) / 180)]; // biome-ignore format: corners
  const arrangement = arrange({ outline: [ring], regions: [] }, () => 0);
  const mesh = triangulate(
    arrangement,
    sampleSegments(arrangement, () => 1, 1000),
  );
  const { shelled, mates } = sharpCorners(mesh);
  const corner = mesh.x.findIndex((x, v) => Math.hypot(x, mesh.y[v]) < 1e-9);
  const meeting = [0, 1, 2].filter((s) => mesh.segmentEnds[2 * s] === corner || mesh.segmentEnds[2 * s + 1] === corner);
  return { shelled: shelled[corner], all: shelled.reduce((sum, is) => sum + is, 0), mates, meeting };
}

describe('sharp corners', () => {
  it('are shelled below 60 degrees and nowhere else, not where a side is cut', () => {
    for (const [degrees, shelled, all] of [
      [30, 1, 1],
      [59.9, 1, 1],
      // Equilateral: rounding counts none of them as sharp.
      [60, 0, 0],
      // The two others have 59.95 degrees.
      [60.1, 0, 2],
      [100, 0, 2],
    ])
      expect(wedge(degrees), `${degrees} degrees`).toMatchObject({ shelled, all });
  });

  it('make mates of their sides below 20 degrees, each of the other', () => {
    for (const [degrees, few] of [
      [19.9, 1],
      [20.1, 0],
    ]) {
      const { mates, meeting } = wedge(degrees);
      const [a, b] = meeting;
      expect(meeting.length).toBe(2);
      expect(mates[a].filter((s) => s === b).length).toBe(few);
      expect(mates[b].filter((s) => s === a).length).toBe(few);
      expect(mates.flat().length).toBe(2 * few);
    }
  });
});

describe('the place where a piece is split', () => {
  it('is the middle unless one end alone is sharp', () => {
    for (const sharp of [true, false]) expect(splitPlace(3.7, sharp, sharp, 10)).toBe(0.5);
  });

  it('lies on a shell of a power of two around the sharp end, neither end nearer than a third', () => {
    for (let length = 1e-3; length < 1e3; length *= 1.17) {
      const place = splitPlace(length, true, false, 10);
      const octaves = Math.log2((place * length) / 10);
      expect(octaves).toBeCloseTo(Math.round(octaves), 9);
      expect(place).toBeGreaterThanOrEqual(1 / 3 - 1e-12);
      expect(place).toBeLessThanOrEqual(2 / 3 + 1e-12);
      expect(splitPlace(length, false, true, 10)).toBeCloseTo(1 - place, 12);
    }
  });
});
