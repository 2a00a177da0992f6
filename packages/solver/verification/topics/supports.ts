import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import type { PlateCheck, PlateModel, Topic } from '../check.ts';
import { type Acceptance, beams, deflections, derived, type Evidence, exact } from '../evidence.ts';
import {
  a,
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
  underPressure,
  units,
} from '../posed.ts';

type Supports = NonNullable<PlateProblem['supports']>;

const reaction = (
  support: number,
  name: string,
  unit: string,
  scale: number,
  expected: number,
  from: Evidence,
  usual: Acceptance,
): PlateCheck => check(`reaction of ${name}`, unit, scale, expected, from, { of: 'reaction', support }, usual);

/** A strip of the length on discs as wide as it, which share what a line would carry. */
const [length, width, t] = [120, 2, 2];
const EI = (E * width * t ** 3) / 12;
const load = 60;
const strip = (
  supports: Supports,
  loads: PlateProblem['loads'] = [{ over: 'all', force: load }],
): PlateModel['plate'] => ({
  plate: 1,
  outline: { rectangle: [length, width] },
  section: { E, nu: 0, thickness: t },
  supports,
  loads,
});
/** Two points across the strip. */
const pair = (x: number, stiffness: number | null = null): Supports =>
  [-1, 1].map((side) => ({ at: [x, (side * width) / 2], stiffness: stiffness === null ? null : stiffness / 2 }));
const half = length / 2;
const continuous = (spans: string) => derived(`three-moment equation, ${spans}`, beams);

const lever = derived('statics of a lever', {
  tolerance: 1e-4,
  why: 'the mesh is not symmetric, so that the two of a pair differ by 1e-5',
});

/** A simply supported beam on a spring in its middle: R = 5/8 W / (1 + 48 E I/(k L^3)). */
const spring = (48 * EI) / length ** 3;

/** Statics: three supports share a load by areas, whatever the plate is made of. */
const tripod: [number, number][] = [
  [-20, -10],
  [25, -12],
  [3, 16],
];
const at: [number, number] = [4, -1.5];
const twiceArea = (p: number[], r: number[], s: number[]) =>
  (r[0] - p[0]) * (s[1] - p[1]) - (r[1] - p[1]) * (s[0] - p[0]);
const whole = twiceArea(tripod[0], tripod[1], tripod[2]);
const shares = [
  twiceArea(at, tripod[1], tripod[2]) / whole,
  twiceArea(tripod[0], at, tripod[2]) / whole,
  twiceArea(tripod[0], tripod[1], at) / whole,
];
const onTripod = (kind: string, each: Partial<Supports[number]>): PlateModel =>
  posed(
    `rounded plate on three ${kind}`,
    {
      ...plateOf({ rectangle: [60, 40], corner: 6 }, { theory: 'shear', loads: [{ at, force: P }] }),
      supports: tripod.map((place) => ({ at: place, ...each })),
    },
    1.2,
    shares.map((share, i) =>
      reaction(i, `support ${i + 1}`, 'P', P, -share, derived('statics: balance of force and moments', exact), exact),
    ),
  );

export const supports: Topic = {
  name: 'rigid and elastic supports',
  about: 'Reactions of points, discs, springs and one-way supports.',
  models: [
    onTripod('points', {}),
    onTripod('springs under discs of 4 mm', { diameter: 4, stiffness: 3e4 }),
    posed('strip over two equal spans', strip([...pair(-half), ...pair(0), ...pair(half)]), 0.5, [
      reaction(2, 'half of the middle', 'W', load, -5 / 16, continuous('two spans'), beams),
      reaction(0, 'half of an end', 'W', load, -3 / 32, continuous('two spans'), beams),
    ]),
    posed(
      'strip over three equal spans',
      strip([...pair(-half), ...pair(-half / 3), ...pair(half / 3), ...pair(half)]),
      0.5,
      [
        reaction(2, 'half of an inner support', 'W', load, -1.1 / 6, continuous('three spans'), beams),
        reaction(0, 'half of an end', 'W', load, -0.4 / 6, continuous('three spans'), beams),
      ],
    ),
    posed('strip on its ends and a spring', strip([...pair(-half), ...pair(0, spring), ...pair(half)]), 0.5, [
      reaction(2, 'half of the spring', 'W', load, -5 / 32, derived('5/8 W/(1 + 48 E I/(k L^3))', beams), beams),
      units('5 W L^3/(384 E I)', (5 * load * length ** 3) / (384 * EI), '', 1).w(
        'at the spring',
        middle,
        1 / 2,
        derived('5/8 W/(1 + 48 E I/(k L^3))', beams),
      ),
    ]),
    posed(
      'strip that drops off a one-way end',
      strip(
        [...pair(-half).map((each) => ({ ...each, acts: 'pull' as const })), ...pair(0), ...pair(half / 2)],
        [{ along: { from: [half, -width / 2], to: [half, width / 2] }, force: -P }],
      ),
      0.5,
      [
        // The end sinks and its support only holds back what rises: a lever on the other two.
        reaction(0, 'half of the free end', 'P', P, 0, lever, exact),
        reaction(2, 'half of the middle', 'P', P, -1 / 2, lever, exact),
        reaction(4, 'half of the fulcrum', 'P', P, 1, lever, exact),
      ],
    ),
    onRectangle(
      'simply supported square on a spring in its middle',
      1,
      {
        edges: simple,
        loads: everywhere,
        supports: [{ at: [0, 0], stiffness: (0.3 * rigidity()) / (0.0116008352 * a ** 2) }],
      },
      [
        underPressure().w(
          'at the centre',
          middle,
          0.0040623527 / 1.3,
          derived('Navier series of the load and of the spring, which takes 0.3 of what it leaves', deflections),
        ),
      ],
    ),
  ],
};
