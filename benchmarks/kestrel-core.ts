/*
 * Times of the sparse core on Kestrel, ms, medians, one JSON line: ordering with symbolic analysis, factor, one solve.
 *
 *   npx esbuild benchmarks/kestrel-core.ts --bundle --platform=node --format=esm --outfile=dist/kestrel-core.mjs
 *   node dist/kestrel-core.mjs 30000 [kernel] [repeats] [threads]
 */
import { argv, stdout } from 'node:process';
import { startNodeCrew } from '../packages/solver/node/crew.ts';
import { availableKernels } from '../packages/solver/src/linear-algebra/compiled-kernel.ts';
import { factorise } from '../packages/solver/src/linear-algebra/factor.ts';
import { graphOf } from '../packages/solver/src/linear-algebra/graph.ts';
import { order } from '../packages/solver/src/linear-algebra/order.ts';
import { scaledResidual } from '../packages/solver/src/linear-algebra/residual.ts';
import { solve } from '../packages/solver/src/linear-algebra/solve.ts';
import { analyse } from '../packages/solver/src/linear-algebra/symbolic.ts';
import { groundedMatrix, kestrelStructure } from './kestrel-system.ts';

const dofs = Number(argv[2] ?? 30_000);
const kernel = availableKernels().find(({ name }) => name === argv[3]) ?? availableKernels()[0];
const repeats = Number(argv[4] ?? 5);
const threads = Number(argv[5] ?? 1);
const crew = threads > 1 ? startNodeCrew(threads - 1) : null;
const structure = kestrelStructure(dofs);
const matrix = groundedMatrix(structure);
const { x, y } = structure.mesh;
const f = Float64Array.from({ length: 3 * matrix.n }, (_, i) => (i % 3 === 0 ? 1 + (i % 7) : 0));

const median = <T>(times: number, run: () => T): [number, T] => {
  const laps: number[] = [];
  let result: T;
  do {
    const begin = performance.now();
    result = run();
    laps.push(performance.now() - begin);
  } while (laps.length < times);
  return [laps.sort((a, b) => a - b)[times >> 1], result];
};
const [analyseMs, symbolic] = median(repeats, () => analyse(matrix, order(graphOf(matrix), x, y)));
// As while a rib is dragged: each factor takes the memory of the one before the last.
let factor = factorise(symbolic, matrix, { kernel, crew });
const [factorMs] = median(repeats, () => {
  const before = factor;
  factor = factorise(symbolic, matrix, { kernel, crew });
  before.memory.release();
});
const [solveMs, u] = median(3 * repeats, () => solve(factor, f));
const round = (ms: number) => Number(ms.toFixed(2));
stdout.write(
  `${JSON.stringify({
    kernel: kernel.name,
    threads,
    n: 3 * matrix.n,
    analyse_ms: round(analyseMs),
    factor_ms: round(factorMs),
    solve_ms: round(solveMs),
    gflops: round(symbolic.flops / factorMs / 1e6),
    flops: symbolic.flops,
    lnz: symbolic.nonZeros,
    resid: scaledResidual(matrix, u, f),
  })}\n`,
);
