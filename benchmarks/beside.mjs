/*
 * Times two commands beside each other: runs them in turns and prints the median of the pairwise ratios, first over
 * second, of every number that both name. Each command prints one JSON line.
 *
 *   node benchmarks/beside.mjs 7 'node dist/kestrel-core.mjs 30000' './other-solver kestrel-30k.mtx'
 *
 * Not covered: start-up, input and output of either command.
 */
import { argv, stdout } from 'node:process';
import { median, pairs } from './pairs.mjs';

const [count, ours, theirs] = argv.slice(2);
for (const [name, times] of Object.entries(pairs(Number(count), ours, theirs))) {
  const all = times.ratios.map((ratio) => ratio.toFixed(2)).join(' ');
  stdout.write(
    `${name.padEnd(8)} ours ${median(times.ours).toFixed(1)}, other ${median(times.theirs).toFixed(1)}, ratio ${median(times.ratios).toFixed(2)} (${all})\n`,
  );
}
