import { type PlateProblem, type Point, solvePlate } from '@flathead/solver';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { deflection, loadSeries, type NavierLoad, type NavierPlate } from './navier.ts';
import { uniform } from './random.ts';

interface Held {
  readonly at: [number, number];
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
}

/** A simply supported rectangle with patches, a point load, and one to four points inside that hold it. */
function randomPlate(seed: number) {
  const pick = uniform(seed);
  const [a, b, nu, E, thickness] = [pick(40, 90), pick(40, 90), pick(0.15, 0.35), pick(6e4, 4e5), pick(0.8, 2)];
  const place = (margin: number): [number, number] => [
    pick(margin - 0.5, 0.5 - margin) * a,
    pick(margin - 0.5, 0.5 - margin) * b,
  ];
  const D = (E * thickness ** 3) / (12 * (1 - nu * nu));
  const plate: NavierPlate = { a, b, D, nu, S: Infinity, terms: 120 };

  const loads: NavierLoad[] = [{ force: pick(-40, 40), at: place(0.1) }];
  for (let k = 0; k < 3; k++) {
    const sides: Point = [pick(0.1, 0.3) * a, pick(0.1, 0.3) * b];
    loads.push({ pressure: pick(0.005, 0.03), centre: place(0.2), sides });
  }
  const held: Held[] = [];
  const count = 1 + (seed % 4);
  while (held.length < count) {
    const at = place(0.15);
    const apart = held.every((other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) > 0.15 * Math.min(a, b));
    if (apart) held.push({ at, stiffness: held.length % 2 === 0 ? null : (pick(20, 400) * D) / (a * b) });
  }
  const samples = Array.from({ length: 8 }, () => place(0.08));
  return { plate, E, thickness, loads, held, samples };
}

/** Forces of the held points: they cancel the deflection there, less what a spring gives way. */
function bySeries({ plate, loads, held, samples }: ReturnType<typeof randomPlate>) {
  const unit = held.map(({ at }) => loadSeries(plate, { force: 1, at }));
  const series = loads.map((load) => loadSeries(plate, load));
  const total = Float64Array.from(series[0], (_, k) => series.reduce((sum, load) => sum + load[k], 0));
  const m = held.length;
  const G = Matrix.zeros(m, m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j < m; j++) {
      const k = held[i].stiffness;
      G.set(i, j, deflection(plate, unit[j], held[i].at) + (i === j && k !== null ? 1 / k : 0));
    }
  const force = solve(G, Matrix.columnVector(held.map(({ at }) => -deflection(plate, total, at)))).to1DArray();
  const balance = total.map((q, k) => force.reduce((sum, r, i) => sum + r * unit[i][k], q));
  return { force, w: samples.map((at) => deflection(plate, balance, at)) };
}

function problemOf({ plate, E, thickness, loads, held, samples }: ReturnType<typeof randomPlate>): PlateProblem {
  const { a, b, nu } = plate;
  return {
    plate: 1,
    outline: { rectangle: [a, b] },
    section: { E, nu, thickness },
    edges: [{ along: 'all', held: 'simple' }],
    supports: held,
    loads: loads.map((load) =>
      'at' in load
        ? { at: [...load.at], force: load.force }
        : { over: { rectangle: [...load.sides], centre: [...load.centre] }, pressure: load.pressure },
    ),
    mesh: { size: 0.03 * Math.sqrt(a * b) },
    report: { at: samples },
  };
}

/** Sum of the loads, each taken as positive, N. */
const forceOf = ({ loads }: ReturnType<typeof randomPlate>): number =>
  loads.reduce(
    (sum, load) => sum + Math.abs('at' in load ? load.force : load.pressure * load.sides[0] * load.sides[1]),
    0,
  );

const largest = (values: readonly number[]): number => Math.max(...values.map(Math.abs));

/** Rectangles, loads and supports drawn anew for each seed. */
const SEEDS = 200;

/** Lagrange multipliers on the Navier series of the plate without its inner supports: no mesh, no elements. */
describe('simply supported rectangles held at points inside, against the Navier series', () => {
  it.each(Array.from({ length: SEEDS }, (_, seed) => seed))('agree within half a percent, seed %i', (seed) => {
    const random = randomPlate(seed);
    const expected = bySeries(random);
    const got = solvePlate(problemOf(random));
    // Of the largest deflection of the plate; of the largest reaction, or of the loads where they next to cancel.
    const w = Math.max(largest(expected.w), got.w.max.value, -got.w.min.value);
    const force = Math.max(largest(expected.force), 0.05 * forceOf(random));
    for (const [i, value] of got.w.at.entries()) expect(Math.abs(value - expected.w[i]) / w).toBeLessThan(0.005);
    for (const [i, value] of got.reactions.entries())
      expect(Math.abs(value - expected.force[i]) / force).toBeLessThan(0.005);
    expect(got.dofs).toBeLessThanOrEqual(8_000);
    expect(got.residual).toBeLessThan(1e-12);
  });
});
