// Solves many made-up models, valid, nearly valid and hostile, and reports what became of them by code.
// `npm run fuzz` runs 10,000; `npm run fuzz -- 500 20000` runs 500 from seed 20000. A case that crashes, gives a number that
// is none, is refused without path or remedy or takes more than 10 s is reported, its seed added to tests/fuzz/pinned.json,
// and the run ends with 1. What took longer once is tried again alone at the end, and then processor time counts.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const [count, first] = [Number(process.argv[2] ?? 10_000), Number(process.argv[3] ?? 0)];
const [HANGS_AFTER, GIVEN_UP_AFTER] = [10_000, 120_000];
const threads = Math.min(2, cpus().length);
const PINNED = root('tests/fuzz/pinned.json');

mkdirSync(root('dist'), { recursive: true });
await build({
  entryPoints: [root('tests/fuzz/worker.ts')],
  outfile: root('dist/fuzz-worker.mjs'),
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'warning',
});

const outcomes = new Map();
const failures = [];
/** Seeds that took too long once, to be tried again. */
const [late, tried] = [[], new Set()];
let running = threads;
const begin = performance.now();
let next = first;
let [done, slowest] = [0, { ms: 0, seed: -1 }];
await Promise.all(Array.from({ length: threads }, runWorker));
report();
process.exitCode = failures.length === 0 ? 0 : 1;

/** Works through seeds until none is left; a worker that hangs or dies is ended and replaced. */
function runWorker() {
  return new Promise((resolve) => {
    let [worker, seed, timer, used] = [start(), -1, null, process.cpuUsage()];
    const give = () => {
      clearTimeout(timer);
      const left = next < first + count;
      // Late ones again, and alone.
      if (!left && (late.length === 0 || running > 1)) {
        running--;
        worker.terminate();
        resolve();
        return;
      }
      seed = left ? next++ : late.pop();
      timer = setTimeout(() => replace(`no answer after ${GIVEN_UP_AFTER / 1000} s`), GIVEN_UP_AFTER);
      used = process.cpuUsage();
      worker.postMessage(seed);
    };
    const replace = (what) => {
      worker.terminate();
      fail(seed, what);
      worker = start();
      give();
    };
    function start() {
      const made = new Worker(root('dist/fuzz-worker.mjs'), { resourceLimits: { maxOldGenerationSizeMb: 2048 } });
      made.on('message', ({ label, failure, ms: waited }) => {
        // Alone, all that the process used is the case's own: a busy machine is no hang.
        const { user, system } = process.cpuUsage(used);
        const ms = tried.has(seed) ? Math.min(waited, (user + system) / 1000) : waited;
        if (ms > HANGS_AFTER && !tried.has(seed)) {
          tried.add(seed);
          late.push(seed);
          give();
          return;
        }
        if (ms > slowest.ms) slowest = { ms, seed };
        if (ms > HANGS_AFTER) fail(seed, `took ${(ms / 1000).toFixed(1)} s`);
        else if (failure !== null) fail(seed, failure);
        else outcomes.set(label, (outcomes.get(label) ?? 0) + 1);
        if (++done % 500 === 0)
          console.log(
            `${done} of ${count}, ${((performance.now() - begin) / 1000).toFixed(0)} s, ${failures.length} failed`,
          );
        give();
      });
      made.on('error', (error) => replace(`the thread died: ${error.message}`));
      return made;
    }
    give();
  });
}

function fail(seed, what) {
  failures.push({ seed, what });
  console.error(`FAILED seed ${seed}: ${what}`);
}

function report() {
  console.log(`\n${count} cases from seed ${first} in ${((performance.now() - begin) / 1000).toFixed(0)} s`);
  for (const [label, number] of [...outcomes].sort()) console.log(`  ${String(number).padStart(6)}  ${label}`);
  console.log(`slowest ${(slowest.ms / 1000).toFixed(1)} s, seed ${slowest.seed}; ${failures.length} failed`);
  if (failures.length === 0) return;
  const pinned = JSON.parse(readFileSync(PINNED, 'utf8'));
  const seeds = [...new Set([...pinned.seeds, ...failures.map(({ seed }) => seed)])].sort((a, b) => a - b);
  writeFileSync(PINNED, `${JSON.stringify({ ...pinned, seeds }, null, 2)}\n`);
  console.log(`Seeds are pinned in ${PINNED}.`);
}
