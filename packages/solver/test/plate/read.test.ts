import { describe, expect, it } from 'vitest';
import { readPlateProblem } from '../../src/plate/read.ts';
import { faultOf } from '../model/fault-of.ts';

const square = {
  plate: 1,
  outline: { rectangle: [10, 10] },
  section: { E: 2e5, nu: 0.3, thickness: 1 },
  edges: [{ along: 'all', held: 'simple' }],
};

describe('readPlateProblem', () => {
  it('returns what was written', () => {
    expect(readPlateProblem(JSON.stringify(square))).toEqual(square);
  });

  it('knows a head model when it sees one', () => {
    expect(faultOf(() => readPlateProblem('{ "flathead": 1 }')).message).toMatch(/head model .*flathead check/);
  });

  it.each([
    [
      'a misspelt section',
      { section: { E: 2e5, nu: 0.3, thicknes: 1 } },
      'SCHEMA',
      'section.thicknes',
      /Did you mean "thickness"/,
    ],
    ['nu', { section: { E: 2e5, nu: 0.5, thickness: 1 } }, 'OUT_OF_RANGE', 'section.nu', /below 0.5/],
    [
      'a layer',
      { section: { layers: [{ E: 1, nu: 0, thickness: 1 }], join: 'bonded' } },
      'SCHEMA',
      'section.layers.0.bottom',
      /missing/,
    ],
    [
      'a load without place',
      { loads: [{ force: 1 }] },
      'SCHEMA',
      'loads.0',
      /\{ over, force } or \{ over, pressure } or \{ at, force }/,
    ],
    [
      'a load with force and pressure',
      { loads: [{ over: 'all', force: 1, pressure: 1 }] },
      'SCHEMA',
      'loads.0',
      /the keys over, force, pressure/,
    ],
    [
      'the shape of a load',
      { loads: [{ over: { rectangle: [1, 0] }, force: 1 }] },
      'OUT_OF_RANGE',
      'loads.0.over.rectangle.1',
      /is 0/,
    ],
    [
      'the end of an edge',
      { edges: [{ along: { from: [0, 0] }, held: 'simple' }] },
      'SCHEMA',
      'edges.0.along.to',
      /missing/,
    ],
    ['a soft support', { supports: [{ at: [0, 0], stiffness: 0 }] }, 'OUT_OF_RANGE', 'supports.0.stiffness', /is 0/],
    ['an empty mesh', { mesh: {} }, 'SCHEMA', 'mesh', /\{ size } or \{ tolerance }/],
    ['50 001 loads', { loads: Array(50_001).fill({ at: [0, 0], force: 1 }) }, 'TOO_LARGE', 'loads', /50001 entries/],
  ])('speaks of the form that was meant: %s', (_, changes, code, path, message) => {
    const fault = faultOf(() => readPlateProblem(JSON.stringify({ ...square, ...changes })));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
    expect(fault.message).toMatch(message);
  });
});
