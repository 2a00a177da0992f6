import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import { compileHead } from '../../src/model/compile.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { readHeadModel } from '../../src/model/read.ts';
import { readPlateProblem } from '../../src/plate/read.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const SEED = 20261125;

const framed: HeadModel = {
  ...twoByTwo,
  body: { ...twoByTwo.body, openings: [{ circle: 2, centre: [20, 0] }] },
  frame: {
    ...twoByTwo.frame!,
    ribs: [
      { between: 'columns', width: 3 },
      { from: [-20, 0], to: [20, 0], width: 2, thickness: 1 },
    ],
  },
  keepOuts: [
    {
      name: 'k',
      shape: {
        polygon: [
          [0, 20],
          [4, 20],
          [4, 24],
        ],
      },
      clearance: 1,
    },
  ],
  seats: [
    { name: 'pad', at: [0, 18], diameter: 3, modulus: 1e4 },
    { name: 'land', shape: { rectangle: [12, 3], centre: [0, -19], corner: 1 }, stiffness: 1e5, acts: 'push' },
  ],
  fasteners: twoByTwo.fasteners.map((each) => ({
    ...each,
    grade: '8.8',
    engagement: 4,
    into: 'stainless-304',
    torque: 300,
    torqueFactor: 0.2,
    scatter: 0.3,
  })),
  limits: { bow: 0.03, fastener: 0.9 },
  cases: [{ name: 'mounted' }, { name: 'one', touched: ['A1'] }],
};

/** Paths of all values of a model, lists and objects included. */
function pathsOf(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, child]) => pathsOf(child, path === '' ? key : `${path}.${key}`));
  return path === '' ? inner : [path, ...inner];
}

const numbers = fc.oneof(
  fc.double({ noNaN: true, min: -200, max: 200 }),
  fc.integer({ min: -5, max: 70 }),
  fc.constantFrom(0, -0, 1e-300, 1e300, -1e300, 1e-3, 1e5, Number.MAX_SAFE_INTEGER),
);
const anything = fc.oneof(
  { weight: 4, arbitrary: numbers },
  { weight: 2, arbitrary: fc.tuple(numbers, numbers) },
  fc.constantFrom<unknown>(null, true, '', 'all', 'M2', 'alumina-96', '__proto__', 'x'.repeat(300), [], {}, undefined),
  fc.record({ rectangle: fc.tuple(numbers, numbers), centre: fc.tuple(numbers, numbers) }),
  fc.record({ circle: numbers, centre: fc.tuple(numbers, numbers) }),
  fc.record({ polygon: fc.array(fc.tuple(numbers, numbers), { maxLength: 8 }) }),
);

/** Compiles, or is refused with words; a head that compiles gives plate problems that read back. */
function compilesOrRefuses(changes: Readonly<Record<string, unknown>>): boolean {
  const text = JSON.stringify(altered(framed, changes));
  try {
    const { problems, siteArea } = compileHead(readHeadModel(text));
    for (const problem of problems) readPlateProblem(JSON.stringify(problem));
    expect(siteArea.flat(2).every(Number.isFinite)).toBe(true);
    return true;
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    expect(thrown.code).not.toBe('INTERNAL');
    expect(thrown.message).toMatch(/[.?)]$/);
    expect(thrown.path).not.toMatch(/^(outline|regions|supports|loads)/);
    return false;
  }
}

describe('a head that was tampered with compiles or is refused with a Fault', () => {
  it(`up to three values replaced by anything (seed ${SEED})`, () => {
    const change = fc.tuple(fc.constantFrom(...pathsOf(framed)), anything);
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const deepestFirst = changes.sort(([a], [b]) => b.split('.').length - a.split('.').length);
        compilesOrRefuses(Object.fromEntries(deepestFirst));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it(`up to four numbers stretched (seed ${SEED})`, () => {
    const lengths = pathsOf(framed).filter((path) => typeof at(framed, path) === 'number' && path !== 'flathead');
    const stretch = fc.tuple(
      fc.constantFrom(...lengths),
      fc.oneof(fc.double({ min: -2, max: 2, noNaN: true }), fc.constant(0)),
    );
    let compiled = 0;
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 4 }), (changes) => {
        const stretched = changes.map(([path, factor]) => [path, Number(at(framed, path)) * factor]);
        if (compilesOrRefuses(Object.fromEntries(stretched))) compiled++;
      }),
      { seed: SEED, numRuns: 600 },
    );
    // Otherwise the changes are too wild to reach what compiling does.
    expect(compiled).toBeGreaterThan(50);
  });
});

function at(model: HeadModel, path: string): unknown {
  return path.split('.').reduce((value: unknown, key) => Reflect.get(Object(value), key), model);
}
