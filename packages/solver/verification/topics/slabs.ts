import type { Point } from '../../src/geometry/point.ts';
import type { PlateModel, Topic } from '../check.ts';
import { deflections, derived } from '../evidence.ts';
import {
  a,
  check,
  everywhere,
  middle,
  onRectangle,
  plateOf,
  posed,
  q,
  rigidity,
  sizeFor,
  underPressure,
} from '../posed.ts';
import { corners } from './points.ts';

const catalan = 0.915965594177219;
const u = underPressure();
const closed = derived("double series in closed form, G/(16 pi^2) with Catalan's constant");
const series = derived('double series over both spans');
const grid = derived(
  'periodic double series; form of Nelson, Lubliner & Mast 1982, Telescope mirror supports: plate deflections on point supports',
);

/** Half panel sides, mm. */
const s = a / 2;
const longCorners = [-1, 1].flatMap((x) => [-1, 1].map((y) => ({ at: [x * s, y * 1.5 * s] as [number, number] })));

/** A cell between lines of symmetry of an endless pattern of supports; A/N is the area of plate to each support. */
function cell(
  name: string,
  [width, height]: Point,
  at: readonly Point[],
  areaEach: number,
  expected: number,
): PlateModel {
  const edges = [{ along: 'all' as const, held: 'symmetry' as const }];
  const supports = at.map(([x, y]) => ({ at: [x, y] as [number, number] }));
  return posed(
    name,
    plateOf({ rectangle: [width, height], centre: [width / 2, height / 2] }, { edges, supports, loads: everywhere }),
    sizeFor(width * height),
    [
      check(
        'peak to valley of w',
        '(q/D) (A/N)^2',
        (Math.abs(q) / rigidity()) * areaEach ** 2,
        expected,
        grid,
        { of: 'peak to valley' as const },
        deflections,
      ),
    ],
  );
}

const root3 = Math.sqrt(3);

export const flatSlabs: Topic = {
  name: 'flat slabs',
  about: 'Endless thin plates on regular patterns of points under uniform pressure, nu = 0.3.',
  models: [
    onRectangle(
      'interior panel, square',
      1,
      { edges: [{ along: 'all', held: 'symmetry' }], supports: corners, loads: everywhere },
      [
        u.w('at the centre', middle, catalan / (16 * Math.PI ** 2), closed),
        u.m('mxx', 'at the centre', middle, 0.0358533, series),
      ],
    ),
    onRectangle(
      'interior panel b/a 1.5',
      1.5,
      { edges: [{ along: 'all', held: 'symmetry' }], supports: longCorners, loads: everywhere },
      [
        u.w('at the centre', middle, 0.017132, series),
        u.m('myy', 'at the centre', middle, 0.0895127, series),
        u.m('mxx', 'at the centre', middle, 0.0379138, series),
      ],
    ),
    cell(
      'square grid of supports',
      [a, a],
      [
        [0, 0],
        [a, 0],
        [a, a],
        [0, a],
      ],
      a * a,
      5.8e-3,
    ),
    cell(
      'triangular grid of supports',
      [s, root3 * s],
      [
        [0, 0],
        [s, root3 * s],
      ],
      (root3 / 2) * a * a,
      4.947e-3,
    ),
    cell(
      'honeycomb of supports',
      [s, root3 * s],
      [
        [s, (root3 / 3) * s],
        [0, ((2 * root3) / 3) * s],
      ],
      (root3 / 4) * a * a,
      9.894e-3,
    ),
  ],
};
