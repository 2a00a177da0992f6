import type { PlateModel, Topic } from '../check.ts';
import { beams, derived, exact, memory, published, tables } from '../evidence.ts';
import { a, check, E, middle, onRectangle, posed, rigidity, simple, thickness, units } from '../posed.ts';
import { base, composite, LENGTH, layered, onEnds, onTop, own, strip, WIDTH } from '../strips.ts';

const nu = 0.3;
const [alpha, gradient] = [6.5e-6, 30];
/** Curvature of the free plate, 1/mm. */
const kappa = (alpha * gradient) / thickness;
const temperature = { gradient, alpha };
const article14 = published(`${tables}, Art. 14`, exact);
const s = a / 2;

const free = (theory: 'thin' | 'shear'): PlateModel =>
  onRectangle(
    `free plate on three points, warmer on top, ${theory} theory`,
    1,
    { temperature, theory, supports: [{ at: [-s, -s] }, { at: [s, -s] }, { at: [s, s] }] },
    [
      units('kappa a^2', kappa * a ** 2, '', 1).w('at the centre', middle, 1 / 4, article14),
      check(
        'mxx at the centre',
        'D kappa',
        rigidity() * kappa,
        0,
        published(`${tables}, Art. 14`, { ...exact, why: 'free to bend: no moment but rounding' }),
        { of: 'mxx' as const, at: middle },
        exact,
      ),
    ],
  );

/** Two bonded layers over the middle `rib` of a strip, heated alike. */
function bimetal(): PlateModel {
  const [E2, t2, rib, rise] = [2e5, 2, 40, 65];
  const { E: E1, thickness: t } = base;
  const [m, n] = [t / t2, E1 / E2];
  const curvature =
    (6 * 4.5e-6 * rise * (1 + m) ** 2) / ((t + t2) * (3 * (1 + m) ** 2 + (1 + m * n) * (m ** 2 + 1 / (m * n))));
  // Bent over the middle, straight beyond: slope kappa rib/2 over the half span less the rise within the rib.
  const expected = (curvature * rib * LENGTH) / 4 - (curvature * rib ** 2) / 8;
  return posed(
    'strip of two bonded metals over its middle, heated',
    {
      plate: 1,
      outline: strip(LENGTH),
      section: { ...base, expansion: 6.5e-6 },
      regions: [
        {
          shape: strip(rib),
          section: layered([
            { ...own, expansion: 6.5e-6 },
            { ...onTop(E2, t2), expansion: 1.1e-5 },
          ]),
        },
      ],
      edges: onEnds(LENGTH, WIDTH),
      temperature: { change: rise },
    },
    1.25,
    [
      units('mm', 1, '', 1).w(
        'in the middle',
        middle,
        expected,
        published('Timoshenko 1925, J. Opt. Soc. Am. 11: bi-metal thermostats', beams),
      ),
    ],
  );
}

/** A rib of another metal along the middle of a strip, heated: curvature of unlike widths about the neutral axis. */
function ribbed(): PlateModel {
  const [b, rib, t2, E2, rise, length] = [6, 2, 4, 2e5, 65, 240];
  const { E: E1, thickness: t } = base;
  const [a1, a2] = [E1 * b * t, E2 * rib * t2];
  const [e, zc] = [(t + t2) / 2, (a2 * (t + t2)) / 2 / (a1 + a2)];
  const curvature = (rise * (a1 * 6.5e-6 * -zc + a2 * 1.1e-5 * (e - zc))) / composite(E1, b, t, E2, rib, t2);
  return posed(
    'strip with a rib of another metal, heated',
    {
      plate: 1,
      outline: strip(length, b),
      section: { ...base, expansion: 6.5e-6 },
      regions: [
        {
          shape: strip(length, rib),
          section: layered([
            { ...own, expansion: 6.5e-6 },
            { ...onTop(E2, t2), expansion: 1.1e-5 },
          ]),
        },
      ],
      edges: onEnds(length, b),
      temperature: { change: rise },
    },
    1,
    [
      units('mm', 1, '', 1).w(
        'in the middle',
        middle,
        (curvature * length ** 2) / 8,
        derived('sum of E A alpha dT (z - zc) over EI about the common neutral axis', {
          tolerance: 0.005,
          why: 'shear between the two builds up over a width at either end: 0.5 %',
        }),
      ),
    ],
  );
}

export const heatedPlates: Topic = {
  name: 'heated plates and strips',
  about: 'Through-thickness gradients, and layers of unlike expansion heated alike.',
  models: [
    free('thin'),
    free('shear'),
    onRectangle('clamped square, warmer on top', 1, { temperature, edges: [{ along: 'all', held: 'clamped' }] }, [
      units('', 1, 'D (1 + nu) kappa', rigidity() * (1 + nu) * kappa).m('mxx', 'at the centre', middle, -1, article14),
      units('', 1, 'D (1 + nu) kappa', rigidity() * (1 + nu) * kappa).m(
        'myy',
        'off the centre',
        [9, -17],
        -1,
        article14,
      ),
    ]),
    onRectangle('simply supported square, warmer on top', 1, { temperature, edges: simple }, [
      units('(1 + nu) kappa a^2', (1 + nu) * kappa * a ** 2, '', 1).w(
        'at the centre',
        middle,
        0.0736713,
        derived('lap w = -(1 + nu) kappa with w = 0 round the edge: the double series of twisted bars'),
      ),
    ]),
    bimetal(),
    ribbed(),
    onRectangle(
      'strip on its ends, warmer on top',
      0.05,
      { temperature, section: { E, nu: 0, thickness }, edges: onEnds(a, 0.05 * a) },
      [units('kappa a^2', kappa * a ** 2, '', 1).w('in the middle', middle, 1 / 8, memory('beam theory: kappa L^2/8'))],
    ),
  ],
};
