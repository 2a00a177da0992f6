import { type PlateProblem, type Point, solvePlate } from '@flathead/solver';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';

/** Simply supported rectangle about the origin, mm, under a uniform pressure, MPa. */
const [a, b, q] = [70, 50, 0.012];
const points: [number, number][] = [
  [0, 0],
  [17, -9],
  [-28, 16],
];
const plate: Omit<PlateProblem, 'section'> = {
  plate: 1,
  outline: { rectangle: [a, b] },
  edges: [{ along: 'all', held: 'simple' }],
  loads: [{ over: 'all', pressure: q }],
  mesh: { size: 1.1 },
  report: { at: points },
};

/** Double sine series over odd waves, `f(p, r)` for the waves p = m pi/a and r = n pi/b. */
function series([x, y]: Point, f: (p: number, r: number) => number, terms = 80): number {
  let sum = 0;
  for (let m = 1; m < 2 * terms; m += 2)
    for (let n = 1; n < 2 * terms; n += 2) {
      const [p, r] = [(m * Math.PI) / a, (n * Math.PI) / b];
      const load = (16 * q) / (Math.PI ** 2 * m * n);
      sum += load * f(p, r) * Math.sin(p * (x + a / 2)) * Math.sin(r * (y + b / 2));
    }
  return sum;
}

const within = (value: number, exact: number, tolerance: number): void => {
  expect(Math.abs(value / exact - 1), `${value} against ${exact}`).toBeLessThan(tolerance);
};

/**
 * Navier's series of the orthotropic plate (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapter on
 * anisotropic plates, from memory; derived: each term fulfils `Dx w,xxxx + 2 H w,xxyy + Dy w,yyyy = q`, H = D1 + 2 Dxy).
 */
describe('simply supported orthotropic rectangle: Navier series', () => {
  it.each([
    ['stiff along x', { Dx: 4e6, Dy: 6e5, D1: 2e5, Dxy: 4e5 }],
    ['stiff along y', { Dx: 5e5, Dy: 3e6, D1: 1.5e5, Dxy: 2e5 }],
    ['a gridwork: next to no twist or Poisson coupling', { Dx: 2e6, Dy: 1e6, D1: 1, Dxy: 3e4 }],
    ['stiff in twist', { Dx: 1e6, Dy: 1e6, D1: 3e5, Dxy: 2e6 }],
  ])('%s', (_, section) => {
    const { Dx, Dy, D1, Dxy } = section;
    const bent = (p: number, r: number): number => 1 / (Dx * p ** 4 + 2 * (D1 + 2 * Dxy) * p * p * r * r + Dy * r ** 4);
    const { w, moments } = solvePlate({ ...plate, section });
    for (const [i, point] of points.entries()) within(w.at[i], series(point, bent), 0.005);
    within(
      moments.at[0].mxx,
      series([0, 0], (p, r) => (Dx * p * p + D1 * r * r) * bent(p, r)),
      0.02,
    );
    within(
      moments.at[0].myy,
      series([0, 0], (p, r) => (Dy * r * r + D1 * p * p) * bent(p, r)),
      0.02,
    );
  });
});

describe('simply supported rectangle on an elastic foundation', () => {
  const [D, nu] = [1.2e6, 0.25];
  const section = { D, nu };
  const free = series([0, 0], (p, r) => 1 / (D * (p * p + r * r) ** 2));

  /** Each term fulfils `D lap lap w + k w = q` (derived; Timoshenko and Woinowsky-Krieger, Art. 57 states the equation). */
  it.each([10, 100, 2000])('under all of it, k = %f N/mm3: Navier series', (modulus) => {
    const { w } = solvePlate({ ...plate, section, foundations: [{ over: 'all', modulus }] });
    const bent = (p: number, r: number): number => 1 / (D * (p * p + r * r) ** 2 + modulus);
    for (const [i, point] of points.entries()) within(w.at[i], series(point, bent), 0.005);
    expect(w.at[0]).toBeLessThan(0.9 * free);
  });

  /**
   * Under a rectangle of it, as under a probe field, waves couple: the energy `a b/4 sum D l^2 A_mn^2 / 2 +
   * k/2 int w^2 - int q w` is least (Ritz, derived).
   */
  it('under two fields of it: Ritz, sines', () => {
    const modulus = 200;
    const fields = [
      { centre: [-14, 6] as Point, sides: [16, 12] as Point },
      { centre: [15, -8] as Point, sides: [10, 14] as Point },
    ];
    const waves = 16;
    /** `[waves * waves]` integral of sin(m pi x/l) sin(n pi x/l) over a stretch from..to. */
    const products = (from: number, to: number, l: number): number[] => {
      const part = (k: number): number =>
        k === 0
          ? to - from
          : (l / (k * Math.PI)) * (Math.sin((k * Math.PI * to) / l) - Math.sin((k * Math.PI * from) / l));
      return Array.from({ length: waves * waves }, (_, i) => {
        const [m, n] = [Math.floor(i / waves) + 1, (i % waves) + 1];
        return (part(m - n) - part(m + n)) / 2;
      });
    };
    const size = waves * waves;
    const K = Matrix.zeros(size, size);
    const f = Matrix.zeros(size, 1);
    const stretches = fields.map(({ centre: [x, y], sides: [width, height] }) => ({
      along: products(x - width / 2 + a / 2, x + width / 2 + a / 2, a),
      across: products(y - height / 2 + b / 2, y + height / 2 + b / 2, b),
    }));
    for (let i = 0; i < size; i++) {
      const [m, n] = [Math.floor(i / waves), i % waves];
      const [p, r] = [((m + 1) * Math.PI) / a, ((n + 1) * Math.PI) / b];
      K.set(i, i, (D * (p * p + r * r) ** 2 * a * b) / 4);
      if (m % 2 === 0 && n % 2 === 0) f.set(i, 0, (4 * q) / (p * r));
      for (let j = 0; j < size; j++) {
        const [s, t] = [Math.floor(j / waves), j % waves];
        for (const { along, across } of stretches)
          K.set(i, j, K.get(i, j) + modulus * along[m * waves + s] * across[n * waves + t]);
      }
    }
    const A = solve(K, f).to1DArray();
    const exact = ([x, y]: Point): number =>
      A.reduce((sum, amplitude, i) => {
        const [m, n] = [Math.floor(i / waves) + 1, (i % waves) + 1];
        return sum + amplitude * Math.sin((m * Math.PI * (x + a / 2)) / a) * Math.sin((n * Math.PI * (y + b / 2)) / b);
      }, 0);
    const foundations = fields.map(({ centre: [x, y], sides: [width, height] }) => ({
      over: { rectangle: [width, height] as [number, number], centre: [x, y] as [number, number] },
      modulus,
    }));
    const { w } = solvePlate({ ...plate, section, foundations });
    for (const [i, point] of points.entries()) within(w.at[i], exact(point), 0.005);
    expect(w.at[0]).toBeLessThan(0.9 * free);
  });
});
