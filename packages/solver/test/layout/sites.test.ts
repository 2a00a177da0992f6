import { describe, expect, it } from 'vitest';
import { rowLength, type SitePattern, siteLayout, siteName, sitePitch } from '../../src/layout/sites.ts';
import { faultOf } from '../model/fault-of.ts';

const pattern: SitePattern = { columns: 5, rows: 2, die: [4.6, 5.2], skip: [1, 1], probes: { field: [4, 4.5] } };

describe('siteLayout', () => {
  it('letters rows from the far side and numbers columns along +x', () => {
    const sites = siteLayout(pattern);
    expect(sites.map(({ name }) => name)).toEqual(['A1', 'A2', 'A3', 'A4', 'A5', 'B1', 'B2', 'B3', 'B4', 'B5']);
    expect(sites[0].centre[0]).toBeLessThan(sites[1].centre[0]);
    expect(sites[0].centre[1]).toBeGreaterThan(sites[5].centre[1]);
    expect(sites[7]).toMatchObject({ name: 'B3', row: 1, column: 2, field: [4, 4.5] });
  });

  it('is pitched by one die more than are skipped, about the origin', () => {
    const sites = siteLayout({ ...pattern, origin: [3, -2] });
    expect(sites[1].centre[0] - sites[0].centre[0]).toBeCloseTo(9.2, 12);
    expect(sites[0].centre[1] - sites[5].centre[1]).toBeCloseTo(10.4, 12);
    for (const axis of [0, 1] as const)
      expect(sites.reduce((sum, { centre }) => sum + centre[axis], 0) / 10).toBeCloseTo([3, -2][axis], 12);
  });

  it('takes a pitch instead', () => {
    const { die: _die, skip: _skip, ...rest } = pattern;
    expect(sitePitch({ ...rest, pitch: [14, 18] })).toEqual([14, 18]);
  });

  it.each([
    ['nothing', { die: undefined, skip: undefined }, 'sites.pitch', /"pitch": \[x, y\] in mm, or "die"/],
    ['a die alone', { skip: undefined }, 'sites.skip', /Add "skip"/],
    ['a skip alone', { die: undefined }, 'sites.die', /Add "die"/],
    ['both', { pitch: [9, 9] as const }, 'sites.pitch', /both "pitch" and "die"/],
  ])('refuses %s to go by', (_, change, path, message) => {
    const fault = faultOf(() => siteLayout({ ...pattern, ...change }));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'SCHEMA', path });
    expect(fault.message).toMatch(message);
  });

  it.each([
    [
      'columns',
      { probes: { field: [9.3, 4] as const } },
      'sites.probes.field.0',
      /A1 and A2 overlap.*9.3 mm wide and 9.2 mm apart/,
    ],
    [
      'rows',
      { probes: { field: [4, 10.5] as const } },
      'sites.probes.field.1',
      /A1 and B1 overlap.*10.5 mm high and 10.4 mm/,
    ],
  ])('refuses fields that overlap between %s', (_, change, path, message) => {
    const fault = faultOf(() => siteLayout({ ...pattern, ...change }));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'OVERLAP', path });
    expect(fault.message).toMatch(message);
  });

  it('lets fields touch, and a single row be higher than its pitch', () => {
    expect(siteLayout({ ...pattern, probes: { field: [9.2, 10.4] } })).toHaveLength(10);
    expect(siteLayout({ ...pattern, rows: 1, probes: { field: [4, 30] } })).toHaveLength(5);
  });

  it('has letters for 64 rows', () => {
    expect([siteName(25, 0), siteName(26, 0), siteName(63, 11)]).toEqual(['Z1', 'AA1', 'BL12']);
    expect(new Set(Array.from({ length: 64 }, (_, row) => siteName(row, 0))).size).toBe(64);
  });
});

describe('rowLength', () => {
  it('shrinks from 29 to 15 die pitches, by 48 %, when 8 sites skip one die and not three (common practice, no source)', () => {
    expect(rowLength(8, 3, 1)).toBe(29);
    expect(rowLength(8, 1, 1)).toBe(15);
    expect(1 - rowLength(8, 1, 4.6) / rowLength(8, 3, 4.6)).toBeCloseTo(0.48, 2);
  });
});
