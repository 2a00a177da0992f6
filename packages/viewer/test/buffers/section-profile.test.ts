import { describe, expect, it } from 'vitest';
import {
  onRowsAndColumns,
  pointAlong,
  profileAt,
  rowSection,
  sectionProfile,
  siteExtents,
} from '../../src/buffers/section-profile.ts';
import { gridMesh, nodal } from './grid-mesh.ts';

const mesh = gridMesh(12, 8, 60, 40);
const sites = [
  { name: 'A1', row: 0, column: 0, centre: [-10, 6], field: [8, 6] },
  { name: 'A2', row: 0, column: 1, centre: [10, 6], field: [8, 6] },
  { name: 'B1', row: 1, column: 0, centre: [-10, -6], field: [8, 6] },
  { name: 'B2', row: 1, column: 1, centre: [10, -6], field: [8, 6] },
] as const;

describe('sectionProfile', () => {
  it('reads a linear field exactly along a slanted line, in um, and nothing off the plate', () => {
    const field = nodal(mesh, (x, y) => 0.01 + 0.0004 * x - 0.0002 * y);
    const line = { from: [-40, -10], to: [20, 15] } as const;
    const profile = sectionProfile(mesh, field, line);
    expect(profile.s.at(-1)).toBeCloseTo(65, 12);
    profile.s.forEach((s, i) => {
      const [x, y] = [-40 + (60 * s) / 65, -10 + (25 * s) / 65];
      if (x < -30 - 1e-6) expect(profile.um[i]).toBeNaN();
      else if (x > -30 + 1e-6) expect(profile.um[i]).toBeCloseTo(10 + 0.4 * x - 0.2 * y, 9);
    });
  });

  it('is read between its samples, and beside them not', () => {
    const profile = sectionProfile(
      mesh,
      nodal(mesh, (x) => x / 1000),
      { from: [-30, 0], to: [30, 0] },
    );
    expect(profileAt(profile, 0)).toBeCloseTo(-30, 9);
    expect(profileAt(profile, 37.123)).toBeCloseTo(7.123, 9);
    expect(profileAt(profile, 60)).toBeCloseTo(30, 9);
    expect(profileAt(profile, 60.1)).toBeNaN();
  });
});

describe('siteExtents', () => {
  it('clips a line to the fields that it crosses, in its order', () => {
    expect(siteExtents(sites, { from: [30, 6], to: [-30, 6] })).toEqual([
      { name: 'A2', from: 16, to: 24 },
      { name: 'A1', from: 36, to: 44 },
    ]);
    expect(siteExtents(sites, { from: [-30, 0], to: [30, 0] })).toEqual([]);
    // At 45 degrees through the middle of B1, which is lower than wide: 6 sqrt 2 long, half of it before the middle.
    const [crossed] = siteExtents(sites, { from: [-20, -16], to: [0, 4] });
    expect(crossed.name).toBe('B1');
    expect(crossed.from).toBeCloseTo(7 * Math.SQRT2, 9);
    expect(crossed.to).toBeCloseTo(13 * Math.SQRT2, 9);
  });
});

it('starts with the row of a site from edge to edge, and snaps to rows and columns within reach', () => {
  expect(rowSection(mesh, sites, 'B2')).toEqual({ from: [-30, -6], to: [30, -6] });
  expect(pointAlong({ from: [0, 0], to: [6, 8] }, 5)).toEqual([3, 4]);
  expect(onRowsAndColumns(sites, [9.2, 20], 1)).toEqual([10, 20]);
  expect(onRowsAndColumns(sites, [8.9, -5.5], 1)).toEqual([8.9, -6]);
});
