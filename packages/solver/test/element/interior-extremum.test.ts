import fc from 'fast-check';
import { expect, it } from 'vitest';
import { deflectionShape } from '../../src/element/deflection.ts';
import { interiorExtremum } from '../../src/element/interior-extremum.ts';
import { sampleTriangles } from './sample-triangles.ts';

it('finds the planted top of a dome inside an element whose nodes all lie below it', () => {
  const { x, y } = sampleTriangles[1];
  const [px, py] = [1.1, 0.5];
  const [a, b, c] = [0.8, 0.3, 0.6];
  const u = new Float64Array(9);
  for (let n = 0; n < 3; n++) {
    const [dx, dy] = [x[n] - px, y[n] - py];
    u[3 * n] = 2 + 0.1 * x[n] - (a * dx * dx + b * dx * dy + c * dy * dy);
    u[3 * n + 1] = -(b * dx + 2 * c * dy);
    u[3 * n + 2] = -(0.1 - (2 * a * dx + b * dy));
  }
  const { max, min } = interiorExtremum(x, y, u, [0.5, 0.1, 0]);
  expect(max.value).toBeCloseTo(1.5, 13);
  expect([max.x, max.y]).toEqual([expect.closeTo(px, 12), expect.closeTo(py, 12)]);
  expect(min.value).toBeLessThan(1.5);
});

it('is attained where it says and never exceeded', () => {
  const dof = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom(...sampleTriangles),
      fc.array(dof, { minLength: 9, maxLength: 9 }),
      fc.tuple(dof, dof, dof),
      ({ x, y }, dofs, plane) => {
        const u = Float64Array.from(dofs);
        const N = new Float64Array(9);
        const deviation = (l0: number, l1: number, l2: number): number => {
          deflectionShape(x, y, l0, l1, l2, N);
          const [px, py] = [l0 * x[0] + l1 * x[1] + l2 * x[2], l0 * y[0] + l1 * y[1] + l2 * y[2]];
          return N.reduce((sum, v, p) => sum + v * u[p], 0) - (plane[0] + plane[1] * px + plane[2] * py);
        };
        const { min, max } = interiorExtremum(x, y, u, plane);
        const scale = 1e-12 * (1 + Math.max(...x.map(Math.abs), ...y.map(Math.abs)));
        let [low, high] = [Infinity, -Infinity];
        for (let i = 0; i <= 20; i++)
          for (let j = 0; i + j <= 20; j++) {
            const w = deviation(1 - (i + j) / 20, i / 20, j / 20);
            [low, high] = [Math.min(low, w), Math.max(high, w)];
          }
        expect(high).toBeLessThanOrEqual(max.value + scale);
        expect(low).toBeGreaterThanOrEqual(min.value - scale);
        for (const { value, x: px, y: py } of [min, max]) {
          const twice = (x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]);
          const l1 = ((px - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (py - y[0])) / twice;
          const l2 = ((x[1] - x[0]) * (py - y[0]) - (px - x[0]) * (y[1] - y[0])) / twice;
          expect(Math.abs(deviation(1 - l1 - l2, l1, l2) - value)).toBeLessThan(1e4 * scale);
        }
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});
