import type { Topic } from '../check.ts';
import { memory } from '../evidence.ts';
import { middle, posed, sizeFor, units } from '../posed.ts';

/**
 * Plates 2 wide, 2 or 10 long and 0.0001 thick, E = 1.7472e7, nu = 0.3, so that D = 1.6e-6; q = 1e-4, P = 4e-4.
 * Deflections in thousandths of `q a^4/D` or `P a^2/D`, which are both 1000.
 */
const [a, D, nu, q, P] = [2, 1.6e-6, 0.3, 1e-4, 4e-4];
const from = 'MacNeal & Harder 1985, A proposed standard set of problems to test finite element accuracy';
const source = memory(from);
const low = memory(from, {
  tolerance: 0.02,
  why: 'recalled, and the value printed is 1.7 % below the series of clamped plates, 2.604',
});

function plate(held: 'simple' | 'clamped', ratio: number, load: 'uniform' | 'point', expected: number, given = source) {
  const how = held === 'simple' ? 'simply supported' : 'clamped';
  const what = load === 'uniform' ? 'uniform' : 'point load at the centre';
  return posed(
    `${how} rectangle b/a ${ratio}, ${what}`,
    {
      plate: 1,
      outline: { rectangle: [a, ratio * a] },
      section: { D, nu },
      edges: [{ along: 'all', held }],
      loads: load === 'uniform' ? [{ over: 'all', pressure: q }] : [{ at: [0, 0], force: P }],
    },
    sizeFor(ratio * a * a),
    [units('thousandths', 1, '', 1).w('at the centre', middle, expected, given)],
  );
}

export const standardRectangles: Topic = {
  name: 'MacNeal and Harder rectangles',
  about: 'The rectangular plates of the standard set, on meshes of our own.',
  models: [
    plate('simple', 1, 'uniform', 4.062),
    plate('simple', 5, 'uniform', 12.97),
    plate('clamped', 1, 'uniform', 1.26),
    plate('clamped', 5, 'uniform', 2.56, low),
    plate('simple', 1, 'point', 11.6),
    plate('simple', 5, 'point', 16.96),
    plate('clamped', 1, 'point', 5.6),
    plate('clamped', 5, 'point', 7.23),
  ],
};
