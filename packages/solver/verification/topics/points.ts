import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import type { Topic } from '../check.ts';
import { derived, type Evidence, exact, published, tables } from '../evidence.ts';
import {
  a,
  everywhere,
  middle,
  onRectangle,
  P,
  plateOf,
  posed,
  q,
  rigidity,
  sizeFor,
  underPressure,
  units,
} from '../posed.ts';

const nadai = published(`${tables}, after Nadai 1922; recomputed`);
const fourier = derived('Fourier series about the middle, the supports as a ring load; after Nadai 1922');
const ritz = derived('Ritz method, Legendre polynomials, 225 terms; beware 0.0249, quoted in places');

/** Sides of a polygon that stands for the circle of radius a: its area is that of the circle. */
const SIDES = 240;

/** Corner k of the polygon: 1.0001 a from the centre, which moves a deflection by 2e-4 at most. */
function rim(k: number): [number, number] {
  const radius = a * Math.sqrt((2 * Math.PI) / (SIDES * Math.sin((2 * Math.PI) / SIDES)));
  const angle = (2 * Math.PI * k) / SIDES;
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

function onRim(count: number, nu: number, expected: number, from: Evidence) {
  const polygon = Array.from({ length: SIDES }, (_, k) => rim(k));
  const supports = Array.from({ length: count }, (_, k) => ({ at: rim((k * SIDES) / count) }));
  const load = Math.PI * a ** 2 * q;
  return posed(
    `disc on ${count} points of its rim, uniform, nu ${nu}`,
    plateOf({ polygon }, { supports, loads: everywhere }, nu),
    sizeFor(Math.PI * a * a),
    [units('P a^2/D', (load * a ** 2) / rigidity(nu), '', 1).w('at the centre', middle, expected, from)],
  );
}

/** Points well inside; three at 0.645 and six at 0.681 of the radius hold a disc flattest. */
function inside(count: number, c: number, expected: number) {
  const supports: PlateProblem['supports'] = Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count + 0.3;
    return { at: [c * a * Math.cos(angle), c * a * Math.sin(angle)] };
  });
  return posed(
    `disc on ${count} points at ${c} of its radius, uniform`,
    plateOf({ circle: 2 * a }, { supports, loads: everywhere }),
    sizeFor(Math.PI * a * a),
    [underPressure().w('at the centre', middle, expected, fourier)],
  );
}

const s = a / 2;
export const corners: PlateProblem['supports'] = [{ at: [-s, -s] }, { at: [s, -s] }, { at: [s, s] }, { at: [-s, s] }];

function onCorners(nu: number, centre: number, side: number, sideMoment: number | null) {
  const u = underPressure(nu);
  const checks = [u.w('at the centre', middle, centre, ritz), u.w('at the middle of a side', [0, s], side, ritz)];
  if (sideMoment !== null)
    checks.push(
      u.m('mxx', 'at the centre', middle, 0.1117, ritz),
      u.m('mxx', 'at the middle of a side along x', [0, s], sideMoment, ritz),
    );
  return onRectangle(
    `square on its corner points, uniform, nu ${nu}`,
    1,
    { supports: corners, loads: everywhere },
    checks,
    nu,
  );
}

const twist = units('P a^2/D', (P * a ** 2) / rigidity(), 'P', P);

export const pointSupports: Topic = {
  name: 'plates on points',
  about: 'Thin plates that only rigid points hold, as fasteners hold a head; nu = 0.3 unless told.',
  models: [
    onRim(3, 0.25, 0.0362, nadai),
    onRim(4, 0.25, 0.02681, fourier),
    onRim(6, 0.25, 0.02252, fourier),
    onRim(3, 0.3, 0.03654, fourier),
    onRim(4, 0.3, 0.02655, fourier),
    onRim(6, 0.3, 0.022, fourier),
    inside(3, 0.92, 0.07568196),
    inside(3, 0.645, 0.007233838),
    inside(4, 0.85, 0.0352154),
    inside(6, 0.681, 0.003499628),
    onCorners(0.3, 0.025507, 0.017747, 0.1504),
    onCorners(0.25, 0.025669, 0.017458, null),
    onRectangle(
      'square on three corners, loaded at the fourth',
      1,
      { supports: corners.slice(0, 3), loads: [{ at: [-s, s], force: P }] },
      [
        twist.w('at the loaded corner', [-s, s], 1 / (2 * 0.7), derived('pure twist, w = P x y/(2 D (1 - nu))', exact)),
        twist.m('mxy', 'at the centre', middle, 1 / 2, derived('pure twist', exact)),
      ],
    ),
  ],
};
