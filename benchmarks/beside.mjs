/*
 * Times two commands beside each other: runs them in turns and prints the median of the pairwise ratios, first over
 * second, of every number that both name. Each command prints one JSON line. Machines are shared and noisy: only ratios of
 * neighbours in time mean anything.
 *
 *   node benchmarks/beside.mjs 7 'node dist/kestrel-core.mjs 30000' './other-solver kestrel-30k.mtx'
 *
 * Not covered: start-up, input and output of either command.
 */
import { execSync } from 'node:child_process';
import { argv, stdout } from 'node:process';

const [pairs, ours, theirs] = argv.slice(2);
const run = (command) => {
  const out = execSync(command, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  return JSON.parse(out.slice(out.lastIndexOf('{')));
};
const names = { analyse_ms: ['analyse_ms', 'analyze_ms'], factor_ms: ['factor_ms'], solve_ms: ['solve_ms'] };
const rows = Array.from({ length: Number(pairs) }, () => [run(ours), run(theirs)]);
const median = (values) => values.sort((a, b) => a - b)[values.length >> 1];
for (const [name, spellings] of Object.entries(names)) {
  const value = (row) => spellings.map((spelling) => row[spelling]).find((number) => number !== undefined);
  const ratio = rows.map(([a, b]) => value(a) / value(b));
  const all = ratio.map((r) => r.toFixed(2)).join(' ');
  stdout.write(
    `${name.padEnd(10)} ours ${median(rows.map(([a]) => value(a))).toFixed(1)}, other ${median(rows.map(([, b]) => value(b))).toFixed(1)}, ratio ${median(ratio).toFixed(2)} (${all})\n`,
  );
}
