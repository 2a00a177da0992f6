import type { Topic } from '../check.ts';
import { derived, published, tables } from '../evidence.ts';
import { a, atCentre, clamped, everywhere, middle, onRectangle, underPoint, underPressure } from '../posed.ts';

const taylor = published('Taylor & Govindjee 2004, Solution of clamped rectangular plate problems; recomputed');
const table35 = published(`${tables}, Table 35; recomputed`);
const edgeMoments = derived(`sine series with edge moments that undo the slopes; method of ${tables}, Art. 44`);
const [u, p] = [underPressure(), underPoint()];
const under = { edges: clamped, loads: everywhere };
const pushed = { edges: clamped, loads: atCentre };

export const clampedPlates: Topic = {
  name: 'clamped plates',
  about: 'Thin rectangles clamped all round, nu = 0.3; a is the short side.',
  models: [
    onRectangle('square, uniform', 1, under, [
      u.w('at the centre', middle, 0.001265319087, taylor),
      u.m('mxx', 'at the centre', middle, 0.02290509, taylor),
      u.m('mxx', 'at the middle of a side across x', [a / 2, 0], -0.051334, taylor),
    ]),
    onRectangle('rectangle b/a 1.5, uniform', 1.5, under, [u.w('at the centre', middle, 0.002197, table35)]),
    onRectangle('rectangle b/a 2, uniform', 2, under, [u.w('at the centre', middle, 0.002533, table35)]),
    onRectangle('square, point load at the centre', 1, pushed, [p.w('at the centre', middle, 0.00561202, edgeMoments)]),
    onRectangle('rectangle b/a 2, point load at the centre', 2, pushed, [
      p.w('at the centre', middle, 0.00723055, edgeMoments),
    ]),
  ],
};
