/*
 * Times of the sparse core on generated plates, one thread, ms, medians after a warm-up; factor: one time for each
 * dense kernel that runs here, fastest first.
 *
 *   npx esbuild benchmarks/factor.ts --bundle --platform=node --format=esm --outfile=dist/factor.mjs && node dist/factor.mjs
 *
 * Not covered: meshing, assembly, workers, browsers, any mesh but jittered points under Delaunay.
 */
import { argv, stdout } from 'node:process';
import { availableKernels } from '../packages/solver/src/linear-algebra/compiled-kernel.ts';
import { factorise } from '../packages/solver/src/linear-algebra/factor.ts';
import { graphOf } from '../packages/solver/src/linear-algebra/graph.ts';
import { dot, halfSolve } from '../packages/solver/src/linear-algebra/half-solve.ts';
import { order } from '../packages/solver/src/linear-algebra/order.ts';
import { scaledResidual } from '../packages/solver/src/linear-algebra/residual.ts';
import { backward, forward, solve } from '../packages/solver/src/linear-algebra/solve.ts';
import { sparseRow } from '../packages/solver/src/linear-algebra/sparse-row.ts';
import { analyse } from '../packages/solver/src/linear-algebra/symbolic.ts';
import { type Outline, type PlateSystem, plateSystem } from './plate-system.ts';

const sizes = (argv[2] ?? '10,30,100').split(',').map(Number);
const outlines = (argv[3] ?? 'rectangle').split(',') as Outline[];

const columns = [
  'outline',
  'kdof',
  'order',
  'symbolic',
  'factor',
  'GF/s',
  'Gflop',
  'Mnnz',
  'solve',
  'half',
  'dot',
  'backward',
  'residual',
];
stdout.write(`${columns.map((name) => name.padStart(name === 'factor' ? 16 : 9)).join(' ')}\n`);
for (const outline of outlines)
  for (const size of sizes) {
    const system = plateSystem(outline, (size * 1000) / 3);
    const row = measure(system, size <= 30 ? 9 : 5);
    stdout.write(
      `${[outline, size, ...row].map((cell) => String(cell).padStart(String(cell).includes('/') ? 16 : 9)).join(' ')}\n`,
    );
  }

function measure({ matrix, x, y }: PlateSystem, repeats: number): string[] {
  const time = <T>(times: number, run: () => T): [number, T] => {
    const laps: number[] = [];
    let result = run();
    for (let k = 0; k < times; k++) {
      const begin = performance.now();
      result = run();
      laps.push(performance.now() - begin);
    }
    return [laps.sort((a, b) => a - b)[times >> 1], result];
  };
  const graph = graphOf(matrix);
  const [ordering, permutation] = time(repeats, () => order(graph, x, y));
  const [analysing, symbolic] = time(repeats, () => analyse(matrix, permutation));
  const kernels = availableKernels();
  const factored = kernels.map((kernel) => time(repeats, () => factorise(symbolic, matrix, { kernel })));
  const [factoring, factor] = factored[0];
  const f = Float64Array.from({ length: 3 * matrix.n }, (_, i) => (i % 3 === 0 ? 1 : 0));
  const [solving, u] = time(4 * repeats, () => solve(factor, f));
  // A bearing disc of some twenty nodes.
  const disc = (cx: number, cy: number) => {
    const nearest = Array.from({ length: matrix.n }, (_, i) => i)
      .sort((a, b) => Math.hypot(x[a] - cx, y[a] - cy) - Math.hypot(x[b] - cx, y[b] - cy))
      .slice(0, 20);
    return sparseRow(
      nearest.map((i) => 3 * i),
      nearest.map(() => 0.05),
    );
  };
  const a = disc(0.21, 0.33);
  const b = halfSolve(factor, disc(0.7, 0.61));
  const [halving, half] = time(20 * repeats, () => halfSolve(factor, a));
  const [dotting] = time(20 * repeats, () => dot(half, b));
  const z = forward(factor, f);
  const [returning] = time(4 * repeats, () => backward(factor, z));
  return [
    ordering.toFixed(1),
    analysing.toFixed(1),
    factored.map(([lap]) => lap.toFixed(1)).join('/'),
    (symbolic.flops / factoring / 1e6).toFixed(2),
    (symbolic.flops / 1e9).toFixed(3),
    (symbolic.nonZeros / 1e6).toFixed(2),
    solving.toFixed(2),
    halving.toFixed(3),
    dotting.toFixed(4),
    returning.toFixed(2),
    scaledResidual(matrix, u, f).toExponential(1),
  ];
}
