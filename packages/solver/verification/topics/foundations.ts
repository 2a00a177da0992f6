import type { Point } from '../../src/geometry/point.ts';
import type { PlateModel, Topic } from '../check.ts';
import { derived, memory, moments, published, tables } from '../evidence.ts';
import {
  a,
  atCentre,
  check,
  E,
  everywhere,
  middle,
  onRectangle,
  P,
  plateOf,
  posed,
  rigidity,
  simple,
  sizeFor,
  underPressure,
  units,
} from '../posed.ts';

const sines = derived('Navier series of D lap lap w + k w = q');
const u = underPressure();
const onModulus = (factor: number, expected: number): PlateModel =>
  onRectangle(
    `simply supported square, k a^4/D = ${factor}, uniform`,
    1,
    { edges: simple, loads: everywhere, foundations: [{ over: 'all', modulus: (factor * rigidity()) / a ** 4 }] },
    [u.w('at the centre', middle, expected, sines)],
  );

/** l = (D/k)^(1/4). The edges of a square of 18 l reflect about exp(-18 / sqrt 2), below 1e-5. */
const l = 3.2;
const endless = plateOf(
  { rectangle: [18 * l, 18 * l] },
  { foundations: [{ over: 'all', modulus: rigidity() / l ** 4 }], loads: atCentre },
);

/** A strip 4 mm wide without Poisson effect, beta = (k b/(4 E I))^(1/4) so that it is 12/beta long. */
const [width, t, beta] = [4, 2, 0.12];
const EI = (E * width * t ** 3) / 12;
const k = (4 * EI * beta ** 4) / width;
const length = 12 / beta;
const hetenyi = memory('Hetenyi 1946, Beams on Elastic Foundation: endless beam under a point load');
const strip: PlateModel['plate'] = {
  plate: 1,
  outline: { rectangle: [length, width] },
  section: { E, nu: 0, thickness: t },
  foundations: [{ over: 'all', modulus: k }],
  loads: [{ along: { from: [0, -width / 2], to: [0, width / 2] }, force: P }],
};

/** A block 30 by 20 so much stiffer than what it rests on that it bends by less than a thousandth of its motion, pushed off its middle. */
const [b, h, modulus, off] = [30, 20, 0.5, 4];
const block: PlateModel['plate'] = {
  plate: 1,
  outline: { rectangle: [b, h] },
  section: { D: 1e8, nu: 0.3 },
  foundations: [{ over: 'all', modulus }],
  loads: [{ at: [off, 0], force: P }],
};
const stiff = { tolerance: 1e-3, why: 'the block itself bends by less than a thousandth of its motion' };
const statics = derived('balance of force and moment of a rigid block: P/(k A) (1 + 12 e x/b^2)', stiff);
const rigid = (where: string, x: number) =>
  check(
    `w ${where}`,
    'P/(k A)',
    P / (modulus * b * h),
    1 + (12 * off * x) / b ** 2,
    statics,
    { of: 'w' as const, at: [x, 0] satisfies Point },
    stiff,
  );

export const foundations: Topic = {
  name: 'plates on foundations',
  about: 'Elastic foundations of modulus k, as the springs of a probe field are.',
  models: [
    posed('endless plate, point load', endless, sizeFor((18 * l) ** 2), [
      units('P l^2/D', (P * l ** 2) / rigidity(), '', 1).w(
        'under the load',
        middle,
        1 / 8,
        published(`${tables}, Art. 57`),
      ),
    ]),
    onModulus(200, 0.002653265),
    onModulus(2000, 0.0005984236),
    posed('endless beam, line load across it', strip, 0.35, [
      units('P beta/(2 k b)', (P * beta) / (2 * k * width), '', 1).w('under the load', middle, 1, {
        ...hetenyi,
        accepted: { tolerance: 0.01, why: 'recalled, not read again: 1 %' },
      }),
      units('', 1, 'P/(4 beta b)', P / (4 * beta * width)).m(
        'mxx',
        'at 1/beta',
        [1 / beta, 0],
        Math.exp(-1) * (Math.cos(1) - Math.sin(1)),
        {
          ...hetenyi,
          accepted: moments,
        },
      ),
    ]),
    posed('rigid block, load off its middle', block, 0.6, [rigid('in the middle', 0), rigid('at its far end', -b / 2)]),
  ],
};
