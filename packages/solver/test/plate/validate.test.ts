import { describe, expect, it } from 'vitest';
import { readPlateProblem } from '../../src/plate/read.ts';
import { faultOf } from '../model/fault-of.ts';

const square = {
  plate: 1,
  outline: { rectangle: [10, 10] },
  openings: [{ circle: 2, centre: [3, 3] }],
  section: { E: 2e5, nu: 0.3, thickness: 1 },
  edges: [{ along: 'all', held: 'simple' }],
};
const read = (changes: object) => readPlateProblem(JSON.stringify({ ...square, ...changes }));
const off = { rectangle: [2, 2], centre: [9, 0] };
const bow = {
  polygon: [
    [0, 0],
    [2, 2],
    [2, 0],
    [0, 2],
  ],
};

describe('checkPlateProblem refuses', () => {
  it.each([
    ['an outline that crosses itself', { outline: bow }, 'BAD_SHAPE', 'outline.polygon.0'],
    ['an opening off the plate', { openings: [off] }, 'OUTSIDE', 'openings.0'],
    ['a region off the plate', { regions: [{ shape: off, section: square.section }] }, 'OUTSIDE', 'regions.0.shape'],
    [
      'a region within an opening',
      { regions: [{ shape: { circle: 1, centre: [3, 3] }, section: square.section }] },
      'OUTSIDE',
      'regions.0.shape',
    ],
    [
      'a region that crosses itself',
      { regions: [{ shape: bow, section: square.section }] },
      'BAD_SHAPE',
      'regions.0.shape.polygon.0',
    ],
    ['a foundation off the plate', { foundations: [{ over: off, modulus: 1 }] }, 'OUTSIDE', 'foundations.0.over'],
    ['a patch load off the plate', { loads: [{ over: off, force: 1 }] }, 'OUTSIDE', 'loads.0.over'],
    ['a point load off the plate', { loads: [{ at: [6, 0], force: 1 }] }, 'OUTSIDE', 'loads.0.at'],
    ['a point load in an opening', { loads: [{ at: [3, 3], force: 1 }] }, 'OUTSIDE', 'loads.0.at'],
    [
      'a line load without length',
      { loads: [{ along: { from: [1, 1], to: [1, 1] }, force: 1 }] },
      'BAD_SHAPE',
      'loads.0.along',
    ],
    [
      'a report off the plate',
      {
        report: {
          at: [
            [0, 0],
            [0, 5.1],
          ],
        },
      },
      'OUTSIDE',
      'report.at.1',
    ],
    ['a reported area off the plate', { report: { over: off } }, 'OUTSIDE', 'report.over'],
    ['a support off the plate', { supports: [{ at: [0, -7] }] }, 'OUTSIDE', 'supports.0.at'],
    ['two supports in one place', { supports: [{ at: [0, 0] }, { at: [0, 0] }] }, 'OVERLAP', 'supports.1.at'],
    ['elements by the million', { mesh: { size: 0.001 } }, 'TOO_LARGE', 'mesh.size'],
    ['shear of a section that has none', { theory: 'shear', section: { D: 1e4, nu: 0.3 } }, 'SCHEMA', 'section'],
  ])('%s', (_, changes, code, path) => {
    const fault = faultOf(() => read(changes));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
  });
});

describe('checkPlateProblem accepts', () => {
  it('points and supports on the edge, arcs included', () => {
    const r = 5 * Math.SQRT1_2;
    expect(
      read({
        outline: { circle: 10 },
        openings: [],
        supports: [{ at: [r, r] }],
        report: {
          at: [
            [5, 0],
            [-r, r],
          ],
        },
      }).supports,
    ).toHaveLength(1);
  });

  it('shapes that reach beyond the plate', () => {
    expect(read({ loads: [{ over: { rectangle: [6, 6], centre: [5, 0] }, pressure: 1 }] }).loads).toHaveLength(1);
  });
});
