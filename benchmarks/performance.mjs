/*
 * Runs the benchmarks and writes docs/performance.md and docs/growth.svg from what they print. Takes a quarter of an hour.
 *
 *   node benchmarks/performance.mjs ['./other-solver {matrix} {repeats}']
 *
 * The command given is another sparse Cholesky solver to compare with: it reads a MatrixMarket file, solves on one thread
 * and prints one JSON line with analyse_ms, factor_ms and solve_ms. Without it that part is left out.
 *
 * Not covered: see the end of the page it writes.
 */
import { execSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { argv, versions } from 'node:process';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { growthChart } from './growth-chart.mjs';
import { median, pairs } from './pairs.mjs';

const folder = mkdtempSync(join(tmpdir(), 'benchmarks-'));
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const other = argv[2];
const PAIRS = 5;
const ROUNDS = 5;

/** Command line of a benchmark, bundled. */
function benchmark(name, ...args) {
  const outfile = join(folder, `${name}.mjs`);
  buildSync({
    entryPoints: [here(`${name}.ts`)],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  return ['node --experimental-wasm-relaxed-simd', outfile, ...args].join(' ');
}

const run = (command) =>
  execSync(command, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 2 ** 26 })
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
const table = (head, rows) =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
const thousands = (n) => n.toLocaleString('en');
const spread = (values) => {
  const digits = (value) => value.toFixed(2);
  return `${digits(median(values))} (${digits(Math.min(...values))}-${digits(Math.max(...values))})`;
};

function besides() {
  const rows = [
    [30_000, 1, 21],
    [100_000, 1, 9],
    [300_000, 1, 3],
    [100_000, 2, 9],
    [300_000, 2, 3],
  ].map(([dofs, threads, repeats]) => {
    const matrix = join(folder, `${dofs}.mtx`);
    execSync(benchmark('export-matrix', dofs, matrix));
    const theirs = other.replaceAll('{matrix}', matrix).replaceAll('{repeats}', repeats);
    const { analyse, factor, solve } = pairs(PAIRS, benchmark('kestrel-core', dofs, 'fused', repeats, threads), theirs);
    return [
      thousands(dofs),
      threads,
      threads === 1 ? spread(analyse.ratios) : '',
      spread(factor.ratios),
      spread(solve.ratios),
    ];
  });
  return `## Beside a native library

The same matrix - Kestrel, grounded, from \`benchmarks/export-matrix.ts\` - in a native general-purpose supernodal Cholesky
library with its own best ordering, one thread. Ratio ours over native: median (least-greatest) of ${PAIRS} pairs run in turns
by \`benchmarks/beside.mjs\`.

${table(['unknowns', 'threads', 'ordering and analysis', 'factor', 'solve'], rows)}

`;
}

function edits() {
  const rows = [1, 2].flatMap((threads) => run(benchmark('edit', 30_000, threads)));
  const stages = Object.keys(rows[0]).filter((name) => !['dofs', 'triangles', 'threads', 'edit'].includes(name));
  return `## An edit, by stage

\`benchmarks/edit.ts\`: the width of a rib of Kestrel changed, ${thousands(rows[0].dofs)} unknowns, ${thousands(rows[0].triangles)} triangles, three
load cases, model to live verdict, ms, medians of 25:

${table(
  ['threads', ...stages, 'all'],
  rows.map((row) => [row.threads, ...stages.map((stage) => row[stage].toFixed(0)), row.edit.toFixed(0)]),
)}

`;
}

function drags() {
  const commands = [
    ...[1, 2].map((threads) => [
      `Node, ${threads} thread${threads > 1 ? 's' : ''}`,
      benchmark('drag', '30,100', threads),
    ]),
    ['Chromium worker, 1 thread', `node ${here('drag-in-browser.mjs')} 30,100`],
  ];
  const rounds = Array.from({ length: ROUNDS }, () => commands.map(([, command]) => run(`chrt -r 1 ${command}`)));
  const least = (values) => `${median(values).toFixed(1)} (${Math.min(...values).toFixed(1)})`;
  const rows = commands.flatMap(([place], i) =>
    rounds[0][i].map(({ dofs }, size) => {
      const frames = rounds.map((round) => round[i][size]);
      return [
        place,
        thousands(dofs),
        least(frames.map(({ field }) => field)),
        least(frames.map(({ verdict }) => verdict)),
      ];
    }),
  );
  return `## A dragged fastener

\`benchmarks/drag.ts\` and \`drag-in-browser.mjs\`: from the new position, median of 120 frames, ms. Of ${ROUNDS} such medians,
run in turns at real-time priority (\`chrt -r 1\`), the middle one and in brackets the least: priority keeps other work off
the processor but not off the memory. The backward solve, which reads the whole factor once at the speed of memory, is most
of the field.

${table(['where', 'unknowns', 'whole deflection field of one case', 'verdict over three cases'], rows)}

`;
}

function growth() {
  const lines = run(benchmark('growth', '10,30,100,300,1000'));
  const rows = lines.slice(0, -1);
  const { exponents } = lines.at(-1);
  writeFileSync(here('../docs/growth.svg'), growthChart(rows, exponents));
  return `## Growth

\`benchmarks/growth.ts\`: a uniform square plate, cold start, one thread.

![Time and factor entries against unknowns](growth.svg)

${table(
  ['unknowns', 'all, ms', 'factor, ms', 'entries of the factor, millions', 'peak memory, GiB'],
  rows.map(({ dofs, all, factor, entries, peak }) => [
    thousands(dofs),
    thousands(all),
    thousands(factor),
    (entries / 1e6).toFixed(1),
    peak,
  ]),
)}

Fitted exponents of the number of unknowns: everything ${exponents.all}, factor time ${exponents.factor} (theory 1.5 for large ones), entries of the
factor ${exponents.entries}.

`;
}

writeFileSync(
  here('../docs/performance.md'),
  `# Speed of the sparse core

Written by \`benchmarks/performance.mjs\`. ${cpus().length} processors, ${cpus()[0].model.trim()}, Node ${versions.node} with
\`--experimental-wasm-relaxed-simd\` (browsers have those instructions switched on; without them the factor takes 1.2 to 1.6
times as long, in plain TypeScript three to four times). The machine is shared and its speed drifts by a factor of two
within minutes: where something is compared, only ratios of runs taken in turns are given.

${other === undefined ? '' : besides()}${edits()}${drags()}${growth()}## Not covered

Other processors; more than two threads; graphics hardware; graded meshes of a million unknowns; matrices that are not
plates. Pages that are new to a process cost a third of a factorisation here: figures are for memory that is used again,
as while a rib is dragged, but for growth.
`,
);
