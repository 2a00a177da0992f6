import { type PlateProblem, type Point, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { blockPattern } from '../../packages/solver/src/assembly/pattern.ts';
import { graphOf } from '../../packages/solver/src/linear-algebra/graph.ts';
import { order } from '../../packages/solver/src/linear-algebra/order.ts';
import { analyse } from '../../packages/solver/src/linear-algebra/symbolic.ts';
import { locator } from '../../packages/solver/src/mesh/locate.ts';
import type { Mesh } from '../../packages/solver/src/mesh/mesh.ts';
import { bestFitPlane } from '../../packages/solver/src/results/best-fit-plane.ts';
import { largestDeviation } from '../../packages/solver/src/results/bow.ts';
import type { Meshed } from '../../packages/solver/src/structure/meshed.ts';
import { plateDomain } from '../../packages/solver/src/structure/plate-domain.ts';
import { sectionIndex } from '../../packages/solver/src/structure/section-index.ts';
import { advance } from '../../packages/solver/src/structure/stages.ts';

type Place = [number, number];

/** Units of length and force in which a problem is posed, and where it lies. */
interface Frame {
  readonly place: (at: Point) => Place;
  /** New numbers for old ones: lengths and forces times these. */
  readonly length: number;
  readonly force: number;
}

const here: Frame = { place: ([x, y]) => [x, y], length: 1, force: 1 };

/** A lopsided plate on springs with a hole, a stiffer region and every kind of load. */
function problemIn({ place, length, force }: Frame, theory: 'thin' | 'shear', size = 3): PlateProblem {
  const shape = (...corners: Place[]) => ({ polygon: corners.map(place) });
  const stiffness = (k: number): number => (k * force) / length;
  const section = (thickness: number) =>
    theory === 'shear'
      ? { E: (210_000 * force) / length ** 2, nu: 0.29, thickness: thickness * length }
      : { D: (210_000 / 10.99) * thickness ** 3 * force * length, nu: 0.29 };
  return {
    plate: 1,
    outline: shape([-31, -19], [29, -21], [33, 17], [4, 24], [-28, 18]),
    openings: [shape([-6, 2], [1, 3], [0, 9], [-5, 8])],
    section: section(3),
    regions: [{ shape: shape([5, -12], [24, -10], [22, 8], [6, 6]), section: section(4.5) }],
    supports: [
      { at: place([-25, -14]), diameter: 4 * length, stiffness: stiffness(4e4) },
      { at: place([24, -15]), diameter: 4 * length, stiffness: stiffness(9e4) },
      { at: place([26, 13]), stiffness: stiffness(2e5) },
      { at: place([-22, 12]), diameter: 3 * length, stiffness: stiffness(6e4) },
    ],
    loads: [
      { over: shape([-16, -9], [-3, -8], [-4, -1], [-17, 1]), pressure: (0.06 * force) / length ** 2 },
      { over: 'all', pressure: (-0.004 * force) / length ** 2 },
      { at: place([11, -3]), force: 21 * force },
      { along: { from: place([-10, 14]), to: place([15, 15]) }, force: 13 * force },
    ],
    theory,
    mesh: { size: size * length },
    report: { at: [place([-12, -5]), place([14, 1]), place([2, 20])] },
  };
}

/** What the solver makes of a mesh, for a mesh that it did not make itself. */
function meshedAs(mesh: Mesh, problem: PlateProblem): Meshed {
  const { regions, ring } = plateDomain(problem, [], 1);
  const pattern = blockPattern(mesh);
  const symbolic = analyse(pattern, order(graphOf(pattern), mesh.x, mesh.y));
  const section = sectionIndex(mesh, regions);
  return {
    mesh,
    locator: locator(mesh),
    section,
    firstArea: regions.length + 1,
    ring,
    pattern,
    inPlane: null,
    symbolic,
  };
}

/** Bow against the plane of the seats, reactions, deflection at the reported points; in the units of the frame. */
function measured(problem: PlateProblem, mesh?: Mesh) {
  const request = { problems: [problem], areas: [], coarsening: 1, keepMesh: false };
  const stages = advance(null, mesh === undefined ? request : { ...request, meshed: meshedAs(mesh, problem) });
  const { structure } = stages;
  const [{ u, reactions, load, residual }] = stages.cases;
  const seats = problem.supports!.flatMap(({ at, stiffness }, i) => [...at, -reactions[i] / stiffness!]);
  const plane = bestFitPlane(Float64Array.from(seats));
  const all = Uint32Array.from(structure.mesh.region.keys());
  const bow = largestDeviation(structure.mesh, u, plane, all).value;
  return { bow, reactions, load, residual, mesh: structure.mesh };
}

function movedMesh(mesh: Mesh, { place }: Frame, mirrored: boolean): Mesh {
  const at = Array.from(mesh.x, (x, i) => place([x, mesh.y[i]]));
  const flip = (ring: Uint32Array, of: number): Uint32Array =>
    mirrored ? ring.map((_, k) => ring[k - (k % of) + ((of - (k % of)) % of)]) : ring;
  const swap = (pairs: Uint32Array): Uint32Array => (mirrored ? pairs.map((_, k) => pairs[k ^ 1]) : pairs);
  return {
    ...mesh,
    x: Float64Array.from(at, ([x]) => x),
    y: Float64Array.from(at, ([, y]) => y),
    triangles: flip(mesh.triangles, 3),
    boundary: swap(mesh.boundary),
  };
}

/** The same mesh with nodes and triangles in another order. */
function renumbered(mesh: Mesh): Mesh {
  const n = mesh.x.length;
  const stride = [7919, 6007, 5003].find((prime) => n % prime !== 0)!;
  const to = Uint32Array.from({ length: n }, (_, i) => (i * stride + 17) % n);
  const from = new Uint32Array(n);
  to.forEach((node, i) => {
    from[node] = i;
  });
  const count = mesh.region.length;
  return {
    ...mesh,
    x: Float64Array.from(from, (i) => mesh.x[i]),
    y: Float64Array.from(from, (i) => mesh.y[i]),
    triangles: Uint32Array.from(
      mesh.triangles,
      (_, k) => to[mesh.triangles[3 * (count - 1 - Math.floor(k / 3)) + (k % 3)]],
    ),
    region: mesh.region.toReversed(),
    boundary: mesh.boundary.map((node) => to[node]),
  };
}

const turn = (degrees: number): Frame => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return { ...here, place: ([x, y]) => [c * x - s * y, s * x + c * y] };
};
const units = (length: number, force: number): Frame => ({
  place: ([x, y]) => [length * x, length * y],
  length,
  force,
});

type Frames = Readonly<Record<string, { frame: Frame; mirrored?: boolean }>>;

const frames: Frames = {
  'turned by 37 degrees': { frame: turn(37) },
  'turned by 90 degrees': { frame: turn(90) },
  'mirrored in x': { frame: { ...here, place: ([x, y]) => [-x, y] }, mirrored: true },
  'mirrored in the diagonal': { frame: { ...here, place: ([x, y]) => [y, x] }, mirrored: true },
  shifted: { frame: { ...here, place: ([x, y]) => [x + 700, y - 310] } },
  'in other units of length and force': { frame: units(100, 0.1) },
  'in centimetres and kilonewtons': { frame: units(0.1, 1e-3) },
};
const far: Frames = { 'in micrometres': { frame: units(1e3, 1) }, 'in metres': { frame: units(1e-3, 1) } };

describe.each(['thin', 'shear'] as const)('%s plate', (theory) => {
  const reference = measured(problemIn(here, theory));

  it('has reactions that balance its loads and no residual', () => {
    expect(reference.reactions.reduce((sum, r) => sum + r, 0) / reference.load).toBeCloseTo(-1, 9);
    expect(reference.residual).toBeLessThan(1e-12);
  });

  it.each(Object.entries(theory === 'thin' ? { ...frames, ...far } : frames))(
    'bows the same when posed %s, to 1e-9 on the same mesh and to its error on a new one',
    (_, { frame, mirrored = false }) => {
      const problem = problemIn(frame, theory);
      const same = measured(problem, movedMesh(reference.mesh, frame, mirrored));
      expect(Math.abs(same.bow / frame.length / reference.bow - 1)).toBeLessThan(1e-9);
      for (const [i, r] of same.reactions.entries())
        expect(Math.abs(r / frame.force / reference.reactions[i] - 1)).toBeLessThan(1e-9);
      expect(same.residual).toBeLessThan(1e-12);

      const remeshed = measured(problem);
      expect(Math.abs(remeshed.bow / frame.length / reference.bow - 1)).toBeLessThan(0.005);
      expect(remeshed.reactions.reduce((sum, r) => sum + r, 0) / remeshed.load).toBeCloseTo(-1, 9);
    },
  );

  it('bows the same with its nodes and triangles in another order', () => {
    const other = measured(problemIn(here, theory), renumbered(reference.mesh));
    expect(Math.abs(other.bow / reference.bow - 1)).toBeLessThan(1e-9);
    for (const [i, r] of other.reactions.entries()) expect(Math.abs(r / reference.reactions[i] - 1)).toBeLessThan(1e-9);
  });

  it('reports the deflections of the same points when turned, through the public door', () => {
    const [straight, turned] = [solvePlate(problemIn(here, theory, 2)), solvePlate(problemIn(turn(37), theory, 2))];
    const largest = Math.max(...straight.w.at.map(Math.abs));
    for (const [i, w] of turned.w.at.entries()) expect(Math.abs(w - straight.w.at[i]) / largest).toBeLessThan(0.003);
  });
});

describe('statics', () => {
  it('gives the reactions of three points whatever the plate is made of', () => {
    // Moments about a point: three reactions follow from the load alone.
    const at: Place[] = [
      [-20, -10],
      [25, -12],
      [3, 16],
    ];
    const load: Place = [4, -1.5];
    const twiceArea = (p: Place, q: Place, r: Place): number =>
      (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
    const [a, b, c] = at;
    const expected = [twiceArea(load, b, c), twiceArea(a, load, c), twiceArea(a, b, load)].map(
      (s) => (-50 * s) / twiceArea(a, b, c),
    );
    for (const diameter of [0, 4])
      for (const stiffness of [null, 3e4]) {
        const { reactions } = solvePlate({
          plate: 1,
          outline: { rectangle: [60, 40], corner: 6 },
          section: { E: 66_000, nu: 0.29, thickness: 4 },
          supports: at.map((place) => ({ at: place, diameter, stiffness })),
          loads: [{ at: load, force: 50 }],
          theory: 'shear',
          mesh: { size: 3 },
        });
        for (const [i, r] of reactions.entries()) expect(r / expected[i]).toBeCloseTo(1, 9);
      }
  });
});
