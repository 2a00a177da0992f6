import type { HeadModel } from '@flathead/solver';
import fc from 'fast-check';
import { between, sometimes, unit } from './numbers.ts';

const frame = fc.record({
  margin: between(3, 14),
  window: between(0, 4),
  material: fc.constantFrom('stainless-17-4', 'stainless-304', 'invar-36'),
  thickness: between(1, 6),
  side: fc.constantFrom('board' as const, 'device' as const, 'level' as const),
  join: fc.constantFrom('bonded' as const, 'sliding' as const, 'bracket' as const),
  ribs: fc.subarray(['columns' as const, 'rows' as const]),
});
const fastener = fc.record({
  angle: unit,
  reach: between(0.9, 1.01),
  screw: fc.constantFrom('M2', 'M2.5', 'M3', '#4-40'),
  stiffness: fc.oneof(fc.constant('rigid' as const), fc.constant('auto' as const), between(1e3, 1e6)),
  acts: fc.oneof(
    { weight: 6, arbitrary: fc.constant('both' as const) },
    fc.constantFrom('pull' as const, 'push' as const),
  ),
  preload: sometimes(between(50, 900)),
});

/** Where a ray from the middle leaves a rectangle of half sides rx and ry. */
function onBox(rx: number, ry: number, angle: number): [number, number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const reach = Math.min(rx / Math.max(Math.abs(c), 1e-9), ry / Math.max(Math.abs(s), 1e-9));
  return [reach * c, reach * s];
}

/** Heads that look sensible; some are refused, say for a fastener off the body or a field wider than its pitch. */
export const headModels: fc.Arbitrary<HeadModel> = fc
  .record({
    columns: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 1, max: 2 }),
    die: fc.tuple(between(3, 7), between(3, 7)),
    skip: fc.tuple(fc.integer({ min: 0, max: 1 }), fc.integer({ min: 0, max: 1 })),
    count: fc.integer({ min: 1, max: 900 }),
    fill: fc.tuple(between(0.4, 1.01), between(0.4, 1.01)),
    preload: between(0, 0.2),
    probes: fc.record({
      touchdown: sometimes(between(0, 0.5)),
      rate: sometimes(between(0.1, 2)),
      relax: sometimes(fc.boolean()),
      kind: sometimes(fc.constantFrom('floating' as const, 'shouldered' as const)),
    }),
    ligament: sometimes(between(0.18, 0.62)),
    margin: fc.tuple(between(12, 30), between(12, 30)),
    round: fc.boolean(),
    thickness: between(1, 9),
    material: fc.oneof(
      { weight: 20, arbitrary: fc.constantFrom('alumina-96', 'mica-glass-ceramic', 'zirconia-3y-tzp') },
      fc.constant('nothing-of-the-kind'),
    ),
    frame: sometimes(frame),
    fasteners: fc.array(fastener, { minLength: 3, maxLength: 8 }),
    heat: sometimes(fc.tuple(between(-40, 150), between(-8, 8))),
    limits: fc.record({
      bow: between(0.002, 0.2),
      flatness: sometimes(between(0.002, 0.2)),
      strengthFactor: sometimes(between(1, 5)),
      fastener: sometimes(between(0.2, 1)),
      contactForce: sometimes(between(0.001, 0.05)),
    }),
    theory: sometimes(fc.constantFrom('thin' as const, 'shear' as const)),
  })
  .map((g): HeadModel => {
    const pitch = [0, 1].map((k) => g.die[k] * (g.skip[k] + 1));
    const [width, height] = [g.columns * pitch[0] + g.margin[0], g.rows * pitch[1] + g.margin[1]];
    const diameter = Math.hypot(width, height);
    const holes =
      g.ligament === undefined
        ? {}
        : { holes: { pitch: 0.4, diameter: 0.4 * (1 - g.ligament), pattern: 'square' as const } };
    const { frame: f } = g;
    const given = <T extends object>(value: T) =>
      Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as {
        [K in keyof T]: Exclude<T[K], undefined>;
      };
    return {
      flathead: 1,
      name: 'any head',
      body: {
        outline: g.round ? { circle: diameter } : { rectangle: [width, height] },
        thickness: g.thickness,
        material: g.material,
      },
      sites: {
        columns: g.columns,
        rows: g.rows,
        die: g.die,
        skip: g.skip,
        probes: {
          count: g.count,
          field: [g.fill[0] * pitch[0], g.fill[1] * pitch[1]],
          preload: g.preload,
          ...given(g.probes),
          ...holes,
        },
      },
      ...(f === undefined
        ? {}
        : {
            frame: {
              outer: g.round ? { circle: diameter + f.margin } : { rectangle: [width + f.margin, height + f.margin] },
              window: { rectangle: [g.columns * pitch[0] + f.window, g.rows * pitch[1] + f.window] },
              material: f.material,
              thickness: f.thickness,
              side: f.side,
              join: f.join,
              ribs: f.ribs.map((between) => ({ between, width: 1.5 })),
            },
          }),
      fasteners: g.fasteners.map((each, i) => {
        // One in each sector of the circle.
        const angle = (2 * Math.PI * (i + 0.6 * each.angle)) / g.fasteners.length;
        const [rx, ry] = [width, height].map((side) => (each.reach * side) / 2 - 2.6);
        return {
          name: `F${i + 1}`,
          at: g.round ? [rx * Math.cos(angle), ry * Math.sin(angle)] : onBox(rx, ry, angle),
          screw: each.screw,
          stiffness: each.stiffness,
          acts: each.acts,
          ...given({ preload: each.preload }),
        };
      }),
      cases: [
        { name: 'mounted' },
        { name: 'touched', touched: 'all' },
        ...(g.heat === undefined ? [] : [{ name: 'hot', temperature: g.heat[0], gradient: g.heat[1] }]),
      ],
      limits: given(g.limits),
      ...given({ theory: g.theory }),
      mesh: { size: diameter / 12 },
    };
  });
