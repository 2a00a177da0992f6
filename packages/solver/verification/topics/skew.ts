import type { PlateCheck, Topic } from '../check.ts';
import { derived, memory } from '../evidence.ts';
import { a, everywhere, middle, plateOf, posed, q, rigidity, simple, sizeFor, underPressure, units } from '../posed.ts';

const morley = memory('Morley 1963, Skew Plates and Structures; recomputed 0.0004078');
const morleyMoments = memory('Morley 1963, Skew Plates and Structures', {
  tolerance: 0.02,
  why: 'recalled, printed to three digits; moments converge with h: 2 %',
});
const corners = derived("corner functions about both kinds of corner fitted along the sides, after Morley's method", {
  tolerance: 0.01,
  why: 'moments grow without bound at the obtuse corners, which slows convergence: 1 %',
});
const razzaque = memory('Razzaque 1973, IJNME 6: finite differences');
const razzaqueMoment = memory('Razzaque 1973, IJNME 6: finite differences', {
  tolerance: 0.02,
  why: 'recalled; moments converge with h: 2 %',
});
const u = underPressure();

/** Of side a, the diagonals along the axes. */
function rhombus(degrees: number, checks: readonly PlateCheck[]) {
  const half = (degrees * Math.PI) / 360;
  const [along, across] = [a * Math.cos(half), a * Math.sin(half)];
  const polygon: [number, number][] = [
    [along, 0],
    [0, across],
    [-along, 0],
    [0, -across],
  ];
  return posed(
    `simply supported rhombus of ${degrees} degrees, uniform`,
    plateOf({ polygon }, { edges: simple, loads: everywhere }),
    // A little coarser than the rest: the mesh is graded to the obtuse corners.
    1.15 * sizeFor(2 * along * across),
    checks,
  );
}

/** Rhombus of 60 degrees with sides a along x, those two simply supported and the others free. */
function skewBridge() {
  const [dx, dy] = [a / 4, (a * Math.sqrt(3)) / 4];
  const corner = (x: number, y: number): [number, number] => [(x * a) / 2 + y * dx, y * dy];
  const [sw, se, ne, nw] = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  const unit = units('q a^4/D', (q * a ** 4) / rigidity(), 'q a^2', q * a ** 2);
  return posed(
    'rhombus of 60 degrees, two sides simply supported, two free, uniform',
    plateOf(
      { polygon: [sw, se, ne, nw] },
      {
        edges: [
          { along: { from: sw, to: se }, held: 'simple' },
          { along: { from: nw, to: ne }, held: 'simple' },
        ],
        loads: everywhere,
      },
    ),
    sizeFor(2 * a * dy),
    [
      unit.w('at the centre', middle, 0.007945, razzaque),
      unit.m('myy', 'at the centre, along the span', middle, 0.09589, razzaqueMoment),
    ],
  );
}

export const skewPlates: Topic = {
  name: 'skew plates',
  about: 'Thin rhombs of side a under uniform pressure, nu = 0.3.',
  models: [
    rhombus(30, [
      u.w('at the centre', middle, 0.000408, morley),
      u.m('myy', 'at the centre, along the short diagonal', middle, 0.0191, morleyMoments),
      u.m('mxx', 'at the centre, along the long diagonal', middle, 0.0108, morleyMoments),
    ]),
    rhombus(40, [u.w('at the centre', middle, 0.000958239, corners)]),
    rhombus(60, [u.w('at the centre', middle, 0.00256, corners)]),
    rhombus(80, [u.w('at the centre', middle, 0.003869, corners)]),
    skewBridge(),
  ],
};
