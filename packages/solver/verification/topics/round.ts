import type { Topic } from '../check.ts';
import { derived, memory, published, tables } from '../evidence.ts';
import {
  a,
  atCentre,
  clamped,
  everywhere,
  middle,
  plateOf,
  posed,
  q,
  type Rest,
  rigidity,
  simple,
  sizeFor,
  underPoint,
  underPressure,
  units,
} from '../posed.ts';

const nu = 0.3;
const article16 = published(`${tables}, Art. 16`);
const article19 = memory(`${tables}, Art. 19`);
const [u, p] = [underPressure(), underPoint()];
const rim: [number, number] = [a, 0];

const disc = (rest: Rest) => plateOf({ circle: 2 * a }, rest);
const size = sizeFor(Math.PI * a * a);

/** Half axes a along x and `ratio * a` along y, as a polygon of 360 sides. */
function ellipse(ratio: number) {
  const polygon = Array.from({ length: 360 }, (_, k): [number, number] => {
    const angle = (k * Math.PI) / 180;
    return [a * Math.cos(angle), ratio * a * Math.sin(angle)];
  });
  return posed(
    `clamped ellipse b/a ${ratio}, uniform`,
    plateOf({ polygon }, { edges: clamped, loads: everywhere }),
    sizeFor(Math.PI * ratio * a * a),
    [
      u.w(
        'at the centre',
        middle,
        1 / (24 + 24 / ratio ** 4 + 16 / ratio ** 2),
        derived('(1 - x^2/a^2 - y^2/b^2)^2 put into the plate equation'),
      ),
    ],
  );
}

/** Both edges held alike; the inner radius is 0.3 a. */
function ring(held: 'simple' | 'clamped', value: number, radius: number) {
  return posed(
    `ring, both edges ${held === 'simple' ? 'simply supported' : 'clamped'}, inner radius 0.3 a, uniform`,
    { ...disc({ edges: [{ along: 'all', held }], loads: everywhere }), openings: [{ circle: 0.6 * a }] },
    sizeFor(Math.PI * a * a * 0.91),
    [
      units('q a^4/D', (q * a ** 4) / rigidity(), '', 1).w(
        `at ${radius} a, where it is largest`,
        [radius * a, 0],
        value,
        derived(`closed form in r^4, r^2, ln r and r^2 ln r; ${tables}, Art. 17`),
      ),
    ],
  );
}

export const roundPlates: Topic = {
  name: 'round plates',
  about: 'Thin discs of radius a, ellipses and rings, nu = 0.3.',
  models: [
    posed('clamped disc, uniform', disc({ edges: clamped, loads: everywhere }), size, [
      u.w('at the centre', middle, 1 / 64, article16),
      u.m('mxx', 'at the centre', middle, (1 + nu) / 16, article16),
      u.m('mxx', 'at the rim on x', rim, -1 / 8, article16),
    ]),
    posed('simply supported disc, uniform', disc({ edges: simple, loads: everywhere }), size, [
      u.w('at the centre', middle, (5 + nu) / (1 + nu) / 64, article16),
      u.m('mxx', 'at the centre', middle, (3 + nu) / 16, article16),
    ]),
    posed('clamped disc, point load at the centre', disc({ edges: clamped, loads: atCentre }), size, [
      p.w('at the centre', middle, 1 / (16 * Math.PI), article19),
    ]),
    posed('simply supported disc, point load at the centre', disc({ edges: simple, loads: atCentre }), size, [
      p.w('at the centre', middle, (3 + nu) / (1 + nu) / (16 * Math.PI), article19),
    ]),
    ellipse(0.6),
    ring('simple', 0.002862394, 0.63101),
    ring('clamped', 0.0006347293, 0.630214),
  ],
};
