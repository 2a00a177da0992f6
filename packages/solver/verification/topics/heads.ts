import type { HeadCheckModel, Topic } from '../check.ts';
import { beams, deflections, derived, exact } from '../evidence.ts';
import { check } from '../posed.ts';

/** A bar of ceramic without Poisson effect on four rigid fasteners, pushed evenly over a site in its middle. */
const [length, width, thickness, E, span, site] = [100, 4, 4, 3.2e5, 80, 24];
const probes = { count: 100, field: [site, width] as [number, number], preload: 0.5 };
const F = probes.count * probes.preload;
const EI = (E * width * thickness ** 3) / 12;
const places: [number, number][] = [
  [-span / 2, -1.5],
  [span / 2, -1.5],
  [span / 2, 1.5],
  [-span / 2, 1.5],
];

const bar: HeadCheckModel['head'] = {
  flathead: 1,
  name: 'bar on four fasteners',
  body: { outline: { rectangle: [length, width] }, thickness, material: 'ideal ceramic' },
  sites: { columns: 1, rows: 1, pitch: [site, width], probes },
  fasteners: places.map((at, i) => ({ name: `F${i + 1}`, at, bearing: 0.2, stiffness: 'rigid' as const })),
  cases: [{ name: 'mounted' }],
  limits: { bow: 0.1 },
  theory: 'thin',
  materials: { 'ideal ceramic': { E, nu: 0, expansion: 6.5e-6 } },
};
/** Simply supported beam under F spread over c in the middle, and its rise between the middle and the end of c. */
const sag = (F * (8 * span ** 3 - 4 * span * site ** 2 + site ** 3)) / (384 * EI);
// From the middle, M = F (2 L - c)/8 - F x^2/(2 c) and w'' = -M/(E I).
const drop = (((F * (2 * span - site)) / 8) * (site / 2) ** 2) / (2 * EI) - (F * (site / 2) ** 4) / (24 * site * EI);

/** A block some thousand times stiffer than its springs, its site off the middle. */
const [k, offset] = [1200, [6, -4] as [number, number]];
const corners: [number, number][] = [
  [-24, -18],
  [24, -18],
  [24, 18],
  [-24, 18],
];
const block: HeadCheckModel['head'] = {
  ...bar,
  name: 'rigid block on four springs',
  body: { outline: { rectangle: [60, 48] }, thickness: 30, material: 'ideal ceramic' },
  sites: { columns: 1, rows: 1, pitch: [10, 8], origin: offset, probes: { count: 300, field: [10, 8], preload: 0.1 } },
  fasteners: corners.map((at, i) => ({ name: `F${i + 1}`, at, bearing: 3, stiffness: k })),
  materials: { 'ideal ceramic': { E: 1e7, nu: 0.25 } },
};
const total = 30;
const share = ([x, y]: readonly [number, number]) =>
  -(1 / 4 + (x * offset[0]) / (4 * 24 ** 2) + (y * offset[1]) / (4 * 18 ** 2));
const statics = derived('balance of force and moments of a rigid block on springs', {
  tolerance: 1e-3,
  why: 'the block itself bends by less than a thousandth of its motion',
});
const probesOn: HeadCheckModel['head'] = {
  ...block,
  name: 'rigid block whose probes relax',
  sites: {
    ...block.sites,
    origin: [0, 0],
    probes: { ...block.sites.probes, rate: 0.5, relax: true },
  },
};
/** Springs of fasteners and of probes side by side. */
const motion = total / (4 * k + 300 * 0.5);

const beam = derived('beam under a load spread over its middle', beams);

export const heads: Topic = {
  name: 'heads',
  about: 'Whole head models, from the recipe to bow, flatness and reactions.',
  models: [
    {
      kind: 'head',
      name: 'bar on four rigid fasteners, one site in its middle',
      head: bar,
      size: 0.5,
      checks: [
        check('bow', 'um', 1e-3, sag * 1e3, beam, ({ cases: [{ bow }] }) => bow.value, deflections),
        check(
          'flatness of the site, minimum zone',
          'um',
          1e-3,
          drop * 1e3,
          beam,
          ({ cases: [{ flatness }] }) => flatness.minimumZone,
          deflections,
        ),
        check(
          'reaction of F1',
          'F',
          F,
          -1 / 4,
          derived('statics', { tolerance: 1e-4, why: 'the mesh is not symmetric: 1e-4' }),
          ({ cases: [{ fasteners }] }) => fasteners[0].reaction,
          exact,
        ),
      ],
    },
    {
      kind: 'head',
      name: 'rigid block on four springs, one site off the middle',
      head: block,
      size: 1.2,
      checks: corners.map((at, i) =>
        check(
          `reaction of F${i + 1}`,
          'F',
          total,
          share(at),
          statics,
          ({ cases: [{ fasteners }] }) => fasteners[i].reaction,
          exact,
        ),
      ),
    },
    {
      kind: 'head',
      name: 'rigid block on four springs, its probes relax',
      head: probesOn,
      size: 1.2,
      checks: [
        check(
          'lift of a seat',
          'um',
          1e-3,
          motion * 1e3,
          statics,
          ({ cases: [{ fasteners }] }) => fasteners[0].w,
          exact,
        ),
        check(
          'force left on the probes',
          'N',
          1,
          total - 150 * motion,
          statics,
          ({ cases: [{ load }] }) => load,
          exact,
        ),
      ],
    },
  ],
};
