/*
 * Growth of time and memory with the number of unknowns, one thread: a square ceramic plate on four fasteners, meshed,
 * assembled, ordered, factorised and solved. One JSON line a size, then one with the exponents of dofs fitted to them.
 *
 *   npx esbuild benchmarks/growth.ts --bundle --platform=node --format=esm --outfile=dist/growth.mjs
 *   node --experimental-wasm-relaxed-simd dist/growth.mjs 10,30,100,300,1000
 *
 * Not covered: graded meshes (see drag.ts and kestrel-core.ts), more than one case, browsers.
 */
import { argv, resourceUsage, stdout } from 'node:process';
import type { PlateProblem } from '../packages/solver/src/plate/plate-problem.ts';
import { advance } from '../packages/solver/src/structure/stages.ts';

const SIDE = 100;
const corner = SIDE / 2 - 5;

const plate = (size: number): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [SIDE, SIDE] },
  section: { thickness: 5, E: 300_000, nu: 0.22 },
  theory: 'shear',
  supports: [-corner, corner].flatMap((x) =>
    [-corner, corner].map((y) => ({ at: [x, y] as [number, number], diameter: 4 })),
  ),
  loads: [{ over: 'all', pressure: 0.01 }],
  mesh: { size },
});

const rows: { readonly dofs: number; readonly all: number; readonly factor: number; readonly entries: number }[] = [];
for (const kdof of (argv[2] ?? '10,30,100,300').split(',').map(Number)) {
  // Equilateral triangles: two to a node, each of area sqrt(3)/4 size^2.
  const size = Math.sqrt((2 * SIDE * SIDE) / (Math.sqrt(3) * ((1000 * kdof) / 3)));
  const begin = performance.now();
  const { structure, cases, timings } = advance(null, {
    problems: [plate(size)],
    areas: [],
    coarsening: 1,
    keepMesh: false,
  });
  const row = {
    dofs: 3 * structure.mesh.x.length,
    all: Math.round(performance.now() - begin),
    factor: Math.round(timings.factor),
    entries: structure.factor.symbolic.nonZeros,
  };
  rows.push(row);
  const peak = Number((resourceUsage().maxRSS / 2 ** 20).toFixed(2));
  stdout.write(`${JSON.stringify({ ...row, peak, residual: cases[0].residual })}\n`);
}

/** Slope of a straight line through the logarithms, least squares. */
const exponent = (of: 'all' | 'factor' | 'entries') => {
  const points = rows.map((row) => [Math.log(row.dofs), Math.log(row[of])]);
  const mean = (k: 0 | 1) => points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const covariance = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return Number((covariance / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0)).toFixed(2));
};
stdout.write(
  `${JSON.stringify({ exponents: { all: exponent('all'), factor: exponent('factor'), entries: exponent('entries') } })}\n`,
);
