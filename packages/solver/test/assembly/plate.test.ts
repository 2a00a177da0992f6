import { describe, expect, it } from 'vitest';
import type { Held, HeldEdge } from '../../src/assembly/held-edges.ts';
import { pointRow } from '../../src/assembly/rows.ts';
import { addRow } from '../../src/linear-algebra/sparse-row.ts';
import { locator } from '../../src/mesh/locate.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { discMesh, mappedMesh, rectangleMesh } from './sample-meshes.ts';
import { solvePlate } from './solve-plate.ts';

const unit = rigidityOf({ D: 1, nu: 0.3 }, 'section');
/** Solid plate of D = 1 and this thickness. */
const solid = (thickness: number) => rigidityOf({ E: (12 * 0.91) / thickness ** 3, nu: 0.3, thickness }, 'section');

/** Edges of a quarter of a plate `[0, a] x [0, b]` whose full middle lies at (a, b). */
const quarter = (held: Held, a = 0.5, b = 0.5): HeldEdge[] => [
  { along: { from: [0, 0], to: [a, 0] }, held },
  { along: { from: [0, 0], to: [0, b] }, held },
  { along: { from: [a, 0], to: [a, b] }, held: 'symmetry' },
  { along: { from: [0, b], to: [a, b] }, held: 'symmetry' },
];

/** Slope of log |error| over log h by least squares. */
function order(sizes: readonly number[], errors: readonly number[]): number {
  const [lx, ly] = [sizes.map(Math.log), errors.map((e) => Math.log(Math.abs(e)))];
  const [mx, my] = [lx, ly].map((l) => l.reduce((sum, v) => sum + v, 0) / l.length);
  return lx.reduce((sum, v, i) => sum + (v - mx) * (ly[i] - my), 0) / lx.reduce((sum, v) => sum + (v - mx) ** 2, 0);
}

const near = (value: number, published: number, tolerance: number) =>
  expect(Math.abs(value / published - 1), `${value} against ${published}`).toBeLessThan(tolerance);

describe('thin square plate, 24 elements a side by symmetry', () => {
  const mesh = rectangleMesh(12, 0.5);

  it('simply supported, uniform load: Timoshenko and Woinowsky-Krieger, Table 8', () => {
    const { w, moment } = solvePlate({ mesh, rigidity: unit, edges: quarter('simple') });
    near(w(0.5, 0.5), 0.00406235, 0.003);
    near(moment(0.5, 0.5)[0], 0.0478864, 0.01);
  });

  it('simply supported, point load at the centre: Timoshenko and Woinowsky-Krieger, Art. 34', () => {
    const load = new Float64Array(3 * mesh.x.length);
    addRow(load, 1 / 4, pointRow(mesh, locator(mesh), [0.5, 0.5], ''));
    near(solvePlate({ mesh, rigidity: unit, edges: quarter('simple'), load }).w(0.5, 0.5), 0.0116008, 0.005);
  });

  it('clamped, uniform load: Taylor and Govindjee 2004', () => {
    const { w, moment } = solvePlate({ mesh, rigidity: unit, edges: quarter('clamped') });
    near(w(0.5, 0.5), 0.001265319087, 0.01);
    near(moment(0.5, 0.5)[0], 0.02290509, 0.01);
    near(moment(0.5, 0)[1], -0.051334, 0.025);
  });

  it('simply supported rectangle b/a = 2: Timoshenko and Woinowsky-Krieger, Table 8', () => {
    const rectangle = rectangleMesh(9, 0.5, 1, 18);
    near(solvePlate({ mesh: rectangle, rigidity: unit, edges: quarter('simple', 0.5, 1) }).w(0.5, 1), 0.0101287, 0.005);
  });
});

describe('shear plate', () => {
  const mesh = rectangleMesh(12, 0.5);

  it.each([
    [0.05, 0.004115, 0.0013273],
    [0.1, 0.0042728, 0.0015046],
    [0.2, 0.0049043, 0.0021722],
  ])('square with t/a = %d: Navier-Mindlin series and Ritz, derived', (thickness, simple, clamped) => {
    const plate = { mesh, rigidity: solid(thickness), theory: 'shear' } as const;
    near(solvePlate({ ...plate, edges: quarter('simple') }).w(0.5, 0.5), simple, 0.004);
    near(solvePlate({ ...plate, edges: quarter('clamped') }).w(0.5, 0.5), clamped, 0.008);
  });

  it('is the thin plate at t/a = 1e-6: no locking', () => {
    const coarse = rectangleMesh(6, 0.5);
    for (const held of ['simple', 'clamped'] as const) {
      const thin = solvePlate({ mesh: coarse, rigidity: unit, edges: quarter(held) }).w(0.5, 0.5);
      const shear = solvePlate({ mesh: coarse, rigidity: solid(1e-6), theory: 'shear', edges: quarter(held) }).w(
        0.5,
        0.5,
      );
      near(shear, thin, 1e-6);
    }
  });

  it('bends a strip like a Timoshenko beam: w = F L^3/(3 D b) + F L/(S b)', () => {
    // nu = 0 makes the plate a beam; Timoshenko 1921.
    const [L, b, t] = [4, 1, 0.8];
    const strip = mappedMesh(16, (s, v) => [L * s + 0.04 * Math.sin(9 * v) * s * (1 - s), b * v], 4);
    const rigidity = rigidityOf({ E: 12 / t ** 3, nu: 0, thickness: t }, 'section');
    const load = new Float64Array(3 * strip.x.length);
    for (let j = 0; j <= 4; j++) load[3 * (17 * j + 16)] = j % 4 === 0 ? 1 / 8 : 1 / 4;
    const edges: HeldEdge[] = [{ along: { from: [0, 0], to: [0, b] }, held: 'clamped' }];
    const { w } = solvePlate({ mesh: strip, rigidity, theory: 'shear', edges, load });
    near(w(L, b / 2), L ** 3 / 3 + L / rigidity.shear![0], 0.002);
  });
});

describe('round plate of chords', () => {
  it('simply supported, tends to (5 + nu)/(1 + nu) q a^4/(64 D), not to the Babuska limit', () => {
    // Timoshenko and Woinowsky-Krieger, Art. 16; the paradox: arXiv 2401.05897. Chords held each on their own would
    // clamp the rim: 1/64.
    const exact = 5.3 / 1.3 / 64;
    const rings = [4, 6, 9];
    const errors = rings.map((n) => {
      const { w } = solvePlate({ mesh: discMesh(n), rigidity: unit, edges: [{ along: 'all', held: 'simple' }] });
      return w(0, 0) / exact - 1;
    });
    expect(Math.abs(errors[2])).toBeLessThan(0.005);
    expect(
      order(
        rings.map((n) => 1 / n),
        errors,
      ),
    ).toBeGreaterThan(1.8);
  });

  it('clamped, tends to q a^4/(64 D)', () => {
    const { w, moment } = solvePlate({ mesh: discMesh(9), rigidity: unit, edges: [{ along: 'all', held: 'clamped' }] });
    near(w(0, 0), 1 / 64, 0.005);
    near(moment(0, 0)[0], 1.3 / 16, 0.015);
  });
});

describe('order of convergence on smooth cases', () => {
  // Batoz, Bathe and Ho 1980: w with h^2; moments with h at least.
  const cells = [4, 8, 16];
  const sizes = cells.map((n) => 1 / n);
  const errors = (held: Held, read: (plate: ReturnType<typeof solvePlate>) => number) =>
    cells.map((n) => read(solvePlate({ mesh: rectangleMesh(n, 0.5), rigidity: unit, edges: quarter(held) })));

  it.each<[Held, number]>([
    ['simple', 0.00406235],
    ['clamped', 0.001265319087],
  ])('deflection of the %s square', (held, exact) => {
    expect(
      order(
        sizes,
        errors(held, ({ w }) => w(0.5, 0.5) - exact),
      ),
    ).toBeGreaterThan(1.8);
  });

  it.each<[string, Held, number, [number, number, number]]>([
    ['at the centre, simply supported', 'simple', 0.0478864, [0.5, 0.5, 0]],
    ['at the centre, clamped', 'clamped', 0.02290509, [0.5, 0.5, 0]],
    ['at the clamped edge', 'clamped', -0.051334, [0.5, 0, 1]],
  ])('moment %s', (_, held, exact, [x, y, component]) => {
    expect(
      order(
        sizes,
        errors(held, ({ moment }) => moment(x, y)[component] - exact),
      ),
    ).toBeGreaterThan(0.9);
  });
});
