import type { PlateProblem } from '@flathead/solver';
import fc from 'fast-check';
import { between, log, sometimes, unit } from './numbers.ts';

type Place = [number, number];
type Shape = PlateProblem['outline'];
type Section = PlateProblem['section'];
type Load = NonNullable<PlateProblem['loads']>[number];

const at = fc.tuple(unit, unit);

/** An outline, a map from the unit square into it, and a length of it. */
interface Ground {
  readonly outline: Shape;
  readonly place: (at: readonly [number, number]) => Place;
  readonly size: number;
}

const rectangle = fc.tuple(between(10, 120), between(10, 120), between(0, 0.5), fc.boolean()).map(
  ([width, height, corner, rounded]): Ground => ({
    outline: { rectangle: [width, height], ...(rounded ? { corner: (corner * Math.min(width, height)) / 2 } : {}) },
    place: ([u, v]) => [(u - 0.5) * 0.86 * width, (v - 0.5) * 0.86 * height],
    size: Math.sqrt(width * height),
  }),
);
const inCircle = (radius: number, [u, v]: readonly [number, number]): Place => [
  radius * Math.sqrt(u) * Math.cos(2 * Math.PI * v),
  radius * Math.sqrt(u) * Math.sin(2 * Math.PI * v),
];
const circle = between(10, 120).map(
  (diameter): Ground => ({
    outline: { circle: diameter },
    place: (p) => inCircle(0.46 * diameter, p),
    size: diameter,
  }),
);
/** Star-shaped, often with re-entrant corners. */
const star = fc.tuple(between(20, 80), fc.array(between(0.5, 1), { minLength: 4, maxLength: 9 })).map(
  ([radius, shares]): Ground => ({
    outline: {
      polygon: shares.map((share, k): Place => {
        const angle = (2 * Math.PI * k) / shares.length;
        return [share * radius * Math.cos(angle), share * radius * Math.sin(angle)];
      }),
    },
    place: (p) => inCircle(0.3 * radius, p),
    size: radius,
  }),
);
const ground = fc.oneof(rectangle, circle, star);

const E = log(1e3, 1e6);
const nu = between(0, 0.45);
const expansion = sometimes(between(1e-6, 3e-5));
const solid = fc.record({ E, nu, thickness: between(0.5, 10) });
const drilled = fc
  .tuple(solid, between(0.2, 0.6), fc.constantFrom('square' as const, 'triangular' as const), between(-90, 90))
  .map(([section, ligament, pattern, angle]) => ({
    ...section,
    holes: { pitch: 0.5, diameter: 0.5 * (1 - ligament), pattern, angle },
  }));
const layered = fc
  .tuple(
    fc.array(fc.record({ E, nu, thickness: between(0.3, 4) }), { minLength: 1, maxLength: 3 }),
    fc.constantFrom('bonded' as const, 'sliding' as const),
  )
  .map(([layers, join]) => {
    let bottom = -2;
    const placed = layers.map((layer) => {
      const each = { ...layer, bottom };
      bottom += layer.thickness;
      return each;
    });
    return { layers: placed, join };
  });
const orthotropic = fc
  .tuple(log(1e4, 1e7), between(0.2, 5), between(0, 0.3), between(0.2, 0.6))
  .map(([Dx, ratio, poisson, twist]) => ({
    Dx,
    Dy: ratio * Dx,
    D1: poisson * Dx * Math.sqrt(ratio),
    Dxy: twist * Dx * Math.sqrt(ratio),
  }));
const section: fc.Arbitrary<Section> = fc.oneof(
  { weight: 4, arbitrary: solid },
  fc.record({ D: log(1e4, 1e8), nu }),
  drilled,
  orthotropic,
  { weight: 2, arbitrary: layered },
);

const support = fc.record({
  at,
  diameter: sometimes(between(0, 5)),
  stiffness: fc.option(log(1e2, 1e8), { nil: null }),
  acts: fc.oneof(
    { weight: 5, arbitrary: fc.constant('both' as const) },
    fc.constantFrom('pull' as const, 'push' as const),
  ),
});
const patch = fc.tuple(at, between(0.05, 0.5), between(0.05, 0.5));
const force = between(-100, 100);
const load = fc.oneof(
  fc.record({ kind: fc.constant('point' as const), at, force }),
  fc.record({ kind: fc.constant('all' as const), pressure: between(-0.05, 0.05) }),
  fc.record({ kind: fc.constant('patch' as const), patch, force }),
  fc.record({ kind: fc.constant('line' as const), at, to: at, force }),
);

/** Plates that look sensible; a few still are refused, say for a support in an opening. */
export const plateProblems: fc.Arbitrary<PlateProblem> = fc
  .record({
    ground,
    section,
    regions: fc.array(fc.tuple(patch, section), { maxLength: 2 }),
    openings: fc.array(fc.tuple(at, between(0.02, 0.1)), { maxLength: 1 }),
    edges: fc.constantFrom(null, null, null, 'simple' as const, 'clamped' as const),
    supports: fc.array(support, { minLength: 3, maxLength: 7 }),
    loads: fc.array(load, { minLength: 1, maxLength: 4 }),
    foundation: sometimes(fc.tuple(patch, log(1e-3, 1e2))),
    gradient: sometimes(between(-40, 40)),
    alpha: expansion,
    theory: fc.constantFrom('thin' as const, 'shear' as const),
    fineness: between(0.08, 0.16),
    report: fc.array(at, { maxLength: 3 }),
  })
  .map(({ ground: { outline, place, size }, ...rest }) => {
    const patched = ([middle, width, height]: [readonly [number, number], number, number]): Shape => ({
      rectangle: [width * size * 0.6, height * size * 0.6],
      centre: place(middle),
    });
    const loads = rest.loads.map((each): Load => {
      if (each.kind === 'point') return { at: place(each.at), force: each.force };
      if (each.kind === 'all') return { over: 'all', pressure: each.pressure };
      if (each.kind === 'line') return { along: { from: place(each.at), to: place(each.to) }, force: each.force };
      return { over: patched(each.patch), force: each.force };
    });
    const { gradient, alpha, foundation, edges } = rest;
    const knowsShear = [rest.section, ...rest.regions.map(([, what]) => what)].every((s) => 'E' in s || 'layers' in s);
    return {
      plate: 1,
      outline,
      section: rest.section,
      regions: rest.regions.map(([where, what]) => ({ shape: patched(where), section: what })),
      openings: rest.openings.map(([where, share]) => ({ circle: share * size, centre: place(where) })),
      ...(edges === null ? {} : { edges: [{ along: 'all', held: edges }] }),
      supports: rest.supports.map(({ at: where, diameter, stiffness, acts }) => ({
        at: place(where),
        ...(diameter === undefined ? {} : { diameter }),
        stiffness,
        acts,
      })),
      loads,
      ...(foundation === undefined ? {} : { foundations: [{ over: patched(foundation[0]), modulus: foundation[1] }] }),
      ...(gradient === undefined || alpha === undefined ? {} : { temperature: { gradient, alpha } }),
      theory: knowsShear ? rest.theory : 'thin',
      mesh: { size: rest.fineness * size },
      report: { at: rest.report.map(place), over: { circle: 0.2 * size, centre: place([0.1, 0.3]) } },
    };
  });
