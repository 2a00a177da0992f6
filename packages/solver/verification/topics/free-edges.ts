import type { Point } from '../../src/geometry/point.ts';
import type { PlateCheck, Topic } from '../check.ts';
import { derived, tables } from '../evidence.ts';
import { a, everywhere, middle, onRectangle, underPressure } from '../posed.ts';

type Held = 'simple' | 'clamped' | 'free';

const levy = derived(`Levy's series, 400 waves; ${tables}, Arts. 41 to 48, prints three digits of it`);
const u = underPressure();
const above: Point = [0, a / 2];
const below: Point = [0, -a / 2];

/** A square whose sides across x are simply supported and whose others are held as told. */
function square(under: Held, over: Held, checks: readonly PlateCheck[]) {
  const s = a / 2;
  const sides: [Held, [number, number], [number, number]][] = [
    ['simple', [-s, -s], [-s, s]],
    ['simple', [s, -s], [s, s]],
    [under, [-s, -s], [s, -s]],
    [over, [-s, s], [s, s]],
  ];
  const edges = sides.flatMap(([held, from, to]) => (held === 'free' ? [] : [{ along: { from, to }, held }]));
  const name = under === over ? `both ${over}` : `${under} and ${over}`;
  return onRectangle(`square, two sides simply supported, the others ${name}`, 1, { edges, loads: everywhere }, checks);
}

export const freeEdges: Topic = {
  name: 'sides of different kinds',
  about: 'Thin squares under uniform pressure, two opposite sides simply supported, nu = 0.3.',
  models: [
    square('free', 'free', [
      u.w('at the centre', middle, 0.01309368, levy),
      u.m('mxx', 'at the centre', middle, 0.1225454, levy),
      u.w('at the middle of a free side', above, 0.01501126, levy),
      u.m('mxx', 'at the middle of a free side', above, 0.1310877, levy),
    ]),
    square('clamped', 'clamped', [
      u.w('at the centre', middle, 0.001917137, levy),
      u.m('myy', 'at the centre', middle, 0.03324489, levy),
      u.m('myy', 'at the middle of a clamped side', above, -0.06983743, levy),
    ]),
    square('simple', 'free', [
      u.w('at the middle of the free side', above, 0.01285241, levy),
      u.m('mxx', 'at the middle of the free side', above, 0.1117005, levy),
    ]),
    square('simple', 'clamped', [
      u.w('at the centre', middle, 0.002785494, levy),
      u.m('myy', 'at the middle of the clamped side', above, -0.0838752, levy),
    ]),
    square('clamped', 'free', [
      u.w('at the middle of the free side', above, 0.01123594, levy),
      u.m('myy', 'at the middle of the clamped side', below, -0.1184067, levy),
    ]),
  ],
};
