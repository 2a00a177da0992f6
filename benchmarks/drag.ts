/*
 * Time of one drag frame: a fastener of Kestrel at a new place, to reactions and the whole deflection field of one case,
 * and of three cases to the verdict. Medians after a warm-up, one JSON line a size.
 *
 *   npx esbuild benchmarks/drag.ts --bundle --platform=node --format=esm --outfile=dist/drag.mjs
 *   node --experimental-wasm-relaxed-simd dist/drag.mjs 30,100 [threads]
 *
 * Not covered: browsers (drag-in-browser.mjs), drawing, moving several fasteners at once.
 */
import { argv, stdout } from 'node:process';
import { startNodeCrew } from '../packages/solver/node/crew.ts';
import { dragTimes } from './drag-frames.ts';

const threads = Number(argv[3] ?? 1);
const factor = { crew: threads > 1 ? startNodeCrew(threads - 1) : null };
for (const kdof of (argv[2] ?? '30,100').split(',').map(Number))
  stdout.write(`${JSON.stringify({ threads, ...dragTimes(1000 * kdof, factor) })}\n`);
