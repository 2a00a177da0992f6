/*
 * Wall time of the 1,000-variant sweep of thickness and rib width of Kestrel by the built command, from start to end, the
 * crossings of the limit solved for. One JSON line.
 *
 *   node benchmarks/sweep.mjs [workers]
 *
 * Not covered: errors of every variant, finer meshes than that of the model.
 */
import { spawnSync } from 'node:child_process';
import { argv, execPath, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';

const path = (file) => fileURLToPath(new URL(`../${file}`, import.meta.url));
const workers = argv[2] ?? '2';
const begin = performance.now();
const { stdout: out, status } = spawnSync(
  execPath,
  [
    path('packages/cli/bin/flathead.js'),
    ...['sweep', path('models/kestrel-both.json'), '--plan', path('models/studies/kestrel-1000-variants.json')],
    ...['--json', '--workers', workers],
  ],
  { encoding: 'utf8', maxBuffer: 1e9 },
);
const seconds = (performance.now() - begin) / 1000;
if (status !== 0) throw new Error(`The sweep ended with ${status}.`);
const { summary } = JSON.parse(out.trimEnd().split('\n').at(-1));
stdout.write(
  `${JSON.stringify({ workers: Number(workers), seconds: Number(seconds.toFixed(1)), ...summary.outcomes, crossings: summary.crossings.length })}\n`,
);
