import { type PlateProblem, type Point, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { deflection, loadSeries, moments, type NavierPlate } from './navier.ts';

const [a, b, nu, E] = [48, 62, 0.27, 305_000];
const pressure = 0.02;

/** Points inside, on no regular grid with the plate, mm. */
const inside: [number, number][] = Array.from({ length: 49 }, (_, k) => [
  a * (-0.41 + 0.137 * (k % 7)),
  b * (-0.4 + 0.133 * Math.floor(k / 7)),
]);

/** Slope of the straight line of least squares through (log h, log error). */
function order(sizes: readonly number[], errors: readonly number[]): number {
  const [x, y] = [sizes.map(Math.log), errors.map(Math.log)];
  const mean = (v: readonly number[]): number => v.reduce((sum, value) => sum + value, 0) / v.length;
  const [mx, my] = [mean(x), mean(y)];
  return x.reduce((sum, v, i) => sum + (v - mx) * (y[i] - my), 0) / x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
}

const rms = (errors: readonly number[]): number => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);

/** The plate turned by an angle, at three element sizes, against the series: relative errors over the points inside. */
function study(theory: 'thin' | 'shear', thickness: number, degrees: number) {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const turned = ([x, y]: Point): [number, number] => [c * x - s * y, s * x + c * y];
  const D = (E * thickness ** 3) / (12 * (1 - nu * nu));
  const S = theory === 'thin' ? Infinity : ((5 / 6) * E * thickness) / (2 * (1 + nu));
  const plate: NavierPlate = { a, b, D, nu, S, terms: 151 };
  const series = loadSeries(plate, { pressure, centre: [0, 0], sides: [a, b] });
  const w = inside.map((at) => deflection(plate, series, at));
  const m = inside.map((at) => moments(plate, series, at));
  const corners: Point[] = [
    [-a / 2, -b / 2],
    [a / 2, -b / 2],
    [a / 2, b / 2],
    [-a / 2, b / 2],
  ];

  const runs = [a / 9, a / 18, a / 36].map((size) => {
    const problem: PlateProblem = {
      plate: 1,
      outline: { polygon: corners.map(turned) },
      section: { E, nu, thickness },
      edges: [{ along: 'all', held: 'simple' }],
      loads: [{ over: 'all', pressure }],
      theory,
      mesh: { size },
      report: { at: inside.map(turned) },
    };
    const result = solvePlate(problem);
    // Moments back in the axes of the plate.
    const back = result.moments.at.map(({ mxx, myy, mxy }) => [
      c * c * mxx + s * s * myy + 2 * c * s * mxy,
      s * s * mxx + c * c * myy - 2 * c * s * mxy,
      (c * c - s * s) * mxy + c * s * (myy - mxx),
    ]);
    return {
      size: 1 / Math.sqrt(result.mesh.nodes),
      w: rms(result.w.at.map((value, i) => value - w[i])) / rms(w),
      m: rms(back.flatMap((values, i) => values.map((value, k) => value - m[i][k]))) / rms(m.flat()),
    };
  });
  const sizes = runs.map(({ size }) => size);
  return {
    runs,
    orderOfW: order(
      sizes,
      runs.map((run) => run.w),
    ),
    orderOfMoments: order(
      sizes,
      runs.map((run) => run.m),
    ),
  };
}

/*
 * Deflections of the discrete Kirchhoff triangle (Batoz, Bathe and Ho 1980) converge with h^2, its moments with h; the
 * shear extension (Katili 1993) keeps both.
 */
describe('convergence to the Navier series', () => {
  it.each([
    ['thin', 2, 0],
    ['thin', 2, 23],
    ['shear', 2, 23],
    ['shear', 9, 0],
  ] as const)(
    '%s plate %d mm thick turned by %d degrees: order 2 in w and at least 1 in moments',
    (theory, thickness, degrees) => {
      const { runs, orderOfW, orderOfMoments } = study(theory, thickness, degrees);
      const errors = (key: 'w' | 'm'): string => runs.map((run) => run[key].toExponential(1)).join(', ');
      console.info(
        `${theory} t ${thickness} at ${degrees}: w ${errors('w')}, order ${orderOfW.toFixed(2)}; moments ${errors('m')}, order ${orderOfMoments.toFixed(2)}`,
      );
      expect(orderOfW).toBeGreaterThanOrEqual(1.8);
      expect(orderOfMoments).toBeGreaterThanOrEqual(0.9);
      expect(runs[2].w).toBeLessThan(0.002);
      expect(runs[2].m).toBeLessThan(0.01);
    },
  );
});
