import { describe, expect, it } from 'vitest';
import { nearestKeepOut } from '../../src/state/keep-out-gap.ts';

const keepOuts = [
  {
    name: 'row',
    shape: { rectangle: [20, 6] as [number, number], centre: [0, 20] as [number, number] },
    clearance: 0.5,
  },
  { name: 'part', shape: { circle: 4, centre: [30, 0] as [number, number] } },
];

describe('nearestKeepOut', () => {
  it('measures from the edge of the screw head', () => {
    expect(nearestKeepOut(keepOuts, [0, 10], 4)).toEqual({ name: 'row', gap: 5, short: false });
    expect(nearestKeepOut(keepOuts, [0, 14.7], 4)).toMatchObject({ name: 'row', short: true });
    expect(nearestKeepOut(keepOuts, [30, 0], 4)?.gap).toBeCloseTo(-4, 1);
  });

  it('knows none where there are none', () => {
    expect(nearestKeepOut(undefined, [0, 0], 4)).toBeNull();
  });
});
