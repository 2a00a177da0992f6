import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { checkPlateProblem } from '../../src/plate/validate.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const compile = (...seats: object[]) => compileHead(checkHeadModel(altered(twoByTwo, { seats })));
const pad = { name: 'P', at: [0, 18], diameter: 4, modulus: 1e4 };
const land = { name: 'L', shape: { rectangle: [20, 3], centre: [0, -19] }, stiffness: 6e5 };

describe('seats', () => {
  it('become supports in cells that push only, behind the fasteners, with the stiffness of their area', () => {
    const { problems, seats, fasteners } = compile(pad, land);
    const supports = problems[0].supports!.slice(fasteners.length);
    expect(supports.map(({ name }) => name)).toEqual(seats.flatMap(({ name, cells }) => cells.map(() => name)));
    expect(new Set(supports.map(({ acts }) => acts))).toEqual(new Set(['push']));
    const stiffness = (of: string) =>
      supports.filter(({ name }) => name === of).reduce((sum, support) => sum + support.stiffness!, 0);
    expect(stiffness('P') / (1e4 * Math.PI * 4)).toBeCloseTo(1, 6);
    expect(stiffness('L') / 6e5).toBeCloseTo(1, 9);
    for (const { length } of seats.map(({ cells }) => cells)) {
      expect(length).toBeGreaterThanOrEqual(8);
      expect(length).toBeLessThanOrEqual(12);
    }
    // The plate problem is one that can be handed on.
    checkPlateProblem(problems[0]);
  });

  it('are part of the plan: an earlier one is kept unless they change', () => {
    const { plan } = compile(pad);
    const again = (...seats: object[]) => compileHead(checkHeadModel(altered(twoByTwo, { seats })), plan);
    expect(again(pad).plan).toBe(plan);
    expect(again({ ...pad, diameter: 3 })).toEqual(compile({ ...pad, diameter: 3 }));
  });

  it.each([
    [
      'over a site',
      [{ ...pad, at: [6, 5] }],
      'OVERLAP',
      'seats.0.at',
      /Seat P covers part of the probe field of site A2/,
    ],
    [
      'off the head',
      [pad, { ...land, shape: { circle: 3, centre: [40, 0] } }],
      'OUTSIDE',
      'seats.1.shape',
      /lies off the head/,
    ],
    ['half off the head', [{ ...pad, at: [26, 0] }], 'OUTSIDE', 'seats.0.at', /off the head with 50\.0 % of its area/],
    [
      'over another',
      [pad, { ...land, shape: { rectangle: [9, 3], centre: [0, 17] } }],
      'OVERLAP',
      'seats.1.shape',
      /P and L overlap/,
    ],
    ['without a stiffness', [{ ...pad, modulus: undefined }], 'SCHEMA', 'seats.0', /neither a modulus nor a stiffness/],
    ['with two', [{ ...pad, stiffness: 5 }], 'SCHEMA', 'seats.0.stiffness', /both a modulus and a stiffness/],
    ['that pull', [{ ...pad, acts: 'pull' }], 'SCHEMA', 'seats.0.acts', /push/],
    ['with shape and place', [{ ...land, diameter: 4 }], 'SCHEMA', 'seats.0.diameter', /"diameter" is unknown|unknown/],
    ['without any place', [{ name: 'P', modulus: 1 }], 'SCHEMA', 'seats.0.shape', /missing/],
    ['of one name', [pad, { ...land, name: 'P' }], 'SCHEMA', 'seats.1.name', /used twice in seats/],
    ['of a modulus of nothing', [{ ...pad, modulus: 0 }], 'OUT_OF_RANGE', 'seats.0.modulus', /is 0/],
    [
      'whose shape crosses itself',
      [
        {
          ...land,
          shape: {
            polygon: [
              [0, 18],
              [4, 20],
              [4, 18],
              [0, 20],
            ],
          },
        },
      ],
      'BAD_SHAPE',
      'seats.0.shape.polygon.0',
      /crosses/,
    ],
  ])('are refused %s', (_, seats, code, path, message) => {
    const fault = faultOf(() => compile(...seats));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
    expect(fault.message).toMatch(message);
  });

  it('are refused in an opening of the body', () => {
    const changes = { 'body.openings': [{ circle: 3, centre: [0, 0] }], seats: [{ ...pad, at: [0, 0], diameter: 2 }] };
    const fault = faultOf(() => compileHead(checkHeadModel(altered(twoByTwo, changes))));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'OUTSIDE', path: 'seats.0.at' });
    expect(fault.message).toMatch(/clear of openings/);
  });
});
