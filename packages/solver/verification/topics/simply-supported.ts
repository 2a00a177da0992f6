import type { Topic } from '../check.ts';
import { derived, moments, printed, published, tables } from '../evidence.ts';
import {
  a,
  atCentre,
  E,
  everywhere,
  middle,
  onRectangle,
  plateOf,
  posed,
  q,
  rigidity,
  simple,
  sizeFor,
  thickness,
  underPoint,
  underPressure,
  units,
} from '../posed.ts';

const navier = published(`${tables}, Table 8; Navier series`);
const levy = derived(`Levy's series; ${tables}, Table 8, prints three digits of it`);
const sines = derived(`Navier series; ${tables}, Arts. 30 and 34`);
const roark = "Roark's Formulas for Stress and Strain, Table 11.4";
const [u, p] = [underPressure(), underPoint()];

const under = { edges: simple, loads: everywhere };
const patch = (width: number, height: number) => ({
  edges: simple,
  loads: [{ over: { rectangle: [width * a, height * a] as [number, number] }, pressure: q }],
});

/** Height of the triangle, mm. */
const h = (a * Math.sqrt(3)) / 2;
const triangle = units('q h^4/D', (q * h ** 4) / rigidity(), 'q h^2', q * h ** 2);

/** Rigidities of the orthotropic plate over that across its ribs. */
const across = 5e5;

export const simplySupported: Topic = {
  name: 'simply supported plates',
  about: 'Thin plates, all edges simply supported, nu = 0.3; a is the short side.',
  models: [
    onRectangle('square, uniform', 1, under, [
      u.w('at the centre', middle, 0.00406235, navier),
      u.m('mxx', 'at the centre', middle, 0.0478864, navier),
    ]),
    onRectangle('rectangle b/a 1.5, uniform', 1.5, under, [
      u.w('at the centre', middle, 0.007724, navier),
      u.m('mxx', 'at the centre', middle, 0.0811601, levy),
      u.m('myy', 'at the centre', middle, 0.0498427, levy),
    ]),
    onRectangle('rectangle b/a 2, uniform', 2, under, [
      u.w('at the centre', middle, 0.0101287, navier),
      u.m('mxx', 'at the centre', middle, 0.1016831, levy),
      u.m('myy', 'at the centre', middle, 0.0463503, levy),
    ]),
    onRectangle('square, point load at the centre', 1, { edges: simple, loads: atCentre }, [
      p.w('at the centre', middle, 0.0116008, published(`${tables}, Art. 34; Navier series`)),
    ]),
    onRectangle('rectangle b/a 2, point load at the centre', 2, { edges: simple, loads: atCentre }, [
      p.w('at the centre', middle, 0.0165239, sines),
    ]),
    onRectangle('square, patch of 0.5 a by 0.5 a', 1, patch(0.5, 0.5), [
      u.w('at the centre', middle, 0.00213218, sines),
      u.m('mxx', 'at the centre', middle, 0.029436, sines),
    ]),
    onRectangle('square, patch of 0.3 a by 0.2 a', 1, patch(0.3, 0.2), [
      u.w('at the centre', middle, 0.000630825, sines),
    ]),
    onRectangle(
      'orthotropic square, Dx : Dy : D1 : Dxy = 4 : 1 : 0.3 : 0.35',
      1,
      { ...under, section: { Dx: 4 * across, Dy: across, D1: 0.3 * across, Dxy: 0.35 * across } },
      [
        units('q a^4/Dy', (q * a ** 4) / across, 'q a^2', q * a ** 2).w(
          'at the centre',
          middle,
          0.00231516,
          derived('Navier series of Dx w,xxxx + 2 (D1 + 2 Dxy) w,xxyy + Dy w,yyyy = q'),
        ),
      ],
    ),
    posed(
      'equilateral triangle of height h, uniform',
      plateOf(
        {
          polygon: [
            [-a / 2, -h / 3],
            [a / 2, -h / 3],
            [0, (2 * h) / 3],
          ],
        },
        under,
      ),
      sizeFor((a * h) / 2),
      [
        triangle.w('at the centroid', middle, 1 / 972, published(`${tables}, Art. 71`)),
        triangle.m('mxx', 'at the centroid', middle, 1.3 / 54, derived('twice differentiated polynomial of Art. 71')),
      ],
    ),
    onRectangle("square, uniform, in Roark's units", 1, under, [
      units('q b^4/(E t^3)', (q * a ** 4) / (E * thickness ** 3), 'q b^2/6', (q * a ** 2) / 6).w(
        'at the centre',
        middle,
        0.0444,
        published(roark),
      ),
      // sigma = 6 m/t^2 = beta q b^2/t^2.
      units('', 1, 'q b^2/6', (q * a ** 2) / 6).m(
        'mxx',
        'at the centre',
        middle,
        0.2874,
        published(roark, printed(moments.tolerance)),
      ),
    ]),
  ],
};
