// Every check of the project, round after round: what `npm test` runs. All steps run even when one fails.
// `node scripts/run-checks.mjs types unit` runs the steps named. Ends with a line `N passed, N failed`.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium } from './find-chromium.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const bin = (path) => join('node_modules', path);
const scratch = mkdtempSync(join(tmpdir(), 'flathead-checks-'));
const MINUTE = 60_000;

/**
 * Rounds of steps. Those of one round know nothing of each other: as many commands run at once as there are processors. A
 * step runs `node` on each of its commands; `tests` names the vitest project whose tests it counts, `workers` how many files
 * run at once; else all but one processor's.
 */
const rounds = [
  [
    {
      name: 'types',
      commands: ['packages/viewer', 'tests', 'packages/solver', 'packages/solver/test', 'packages/cli'].map((p) => [
        bin('typescript/bin/tsc'),
        '-p',
        p,
      ]),
    },
    { name: 'style', commands: [[bin('@biomejs/biome/bin/biome'), 'check', '.']] },
    { name: 'imports', commands: [['scripts/check-imports.mjs']] },
    { name: 'unused', commands: [[bin('knip/bin/knip.js'), '--no-progress']] },
    { name: 'licences', commands: [['scripts/licences.mjs', '--check']] },
    { name: 'api', commands: [['scripts/api.mjs', '--check']] },
    { name: 'links', commands: [['scripts/check-links.mjs']] },
    { name: 'build-cli', commands: [['packages/cli/build.mjs']] },
  ],
  [{ name: 'unit', tests: 'unit', workers: availableParallelism(), limit: 8 * MINUTE }],
  [{ name: 'published', tests: 'published', workers: availableParallelism(), limit: 6 * MINUTE }],
  [
    { name: 'command-line', tests: 'command-line', workers: 1, limit: 4 * MINUTE },
    { name: 'memory', commands: [['scripts/memory.mjs']] },
    { name: 'package', tests: 'package', workers: 1, limit: 4 * MINUTE },
    { name: 'fuzz', tests: 'fuzz', workers: 1, limit: 6 * MINUTE },
  ],
  [
    {
      name: 'build-viewer',
      commands: [
        [bin('vite/bin/vite.js'), 'build', '--config', 'packages/viewer/vite.config.ts', '--logLevel', 'warn'],
      ],
    },
  ],
  [{ name: 'size', commands: [[bin('size-limit/bin.js')]] }],
  [
    {
      name: 'browser',
      tests: 'browser',
      workers: availableParallelism(),
      limit: 15 * MINUTE,
      needs: findChromium,
      without: 'no Chromium on this machine',
    },
  ],
  [
    {
      name: 'pace',
      tests: 'pace',
      limit: 8 * MINUTE,
      needs: findChromium,
      without: 'no Chromium on this machine',
    },
  ],
];
const steps = rounds.flat();

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !steps.some((step) => step.name === name));
if (unknown.length > 0) {
  console.error(`No step called ${unknown.join(', ')}. Steps: ${steps.map((step) => step.name).join(', ')}.`);
  process.exit(2);
}

const waiting = [];
let free = availableParallelism();
const begin = performance.now();
const outcomes = [];
for (const round of rounds) {
  const due = round.filter((step) => asked.length === 0 || asked.includes(step.name));
  outcomes.push(...(await together(due)));
}
rmSync(scratch, { recursive: true, force: true });
report(outcomes);
process.exitCode = outcomes.every(({ failed }) => failed === 0) ? 0 : 1;

/** Performs the steps of a round at once, each command in its turn; outcomes in the order of the steps. */
function together(due) {
  const output = due.length > 1 ? 'held' : 'shown';
  return Promise.all(due.map((step) => perform(step, output)));
}

/** Output of tests is `shown` as it comes or `held` until the end of the step, that of commands shown only when they fail. */
async function perform(step, output) {
  const start = performance.now();
  const outcome = (passed, failed, skipped, note = '', text = '') => {
    const seconds = (performance.now() - start) / 1000;
    if (text) console.log(text);
    console.log(`-- ${step.name}: ${failed > 0 ? 'FAILED' : 'ok'}, ${seconds.toFixed(1)} s${note && `: ${note}`}\n`);
    return { name: step.name, seconds, passed, failed, skipped, note };
  };
  if (output === 'shown') console.log(`-- ${step.name}`);
  if (step.needs && !step.needs())
    return onCi() ? outcome(0, 1, 0, step.without) : outcome(0, 0, 1, `skipped, ${step.without}`);
  if (step.tests) {
    const { passed, failed, skipped, note, text } = await inTurn(() => runTests(step, output));
    return outcome(passed, failed, skipped, note, text);
  }
  const ends = await Promise.all(step.commands.map((command) => inTurn(() => node(command, 5 * MINUTE, 'held'))));
  const bad = step.commands.flatMap((command, i) => (ends[i].code === 0 ? [] : [{ command, ...ends[i] }]));
  if (bad.length === 0) return outcome(1, 0, 0);
  const note = bad.map(({ command, code }) => `${command.join(' ')} ended with ${code}`).join('; ');
  return outcome(0, 1, 0, note, bad.map(({ output: text }) => text.trimEnd()).join('\n'));
}

/** Runs one vitest project and counts from its JSON report, so that a run without tests cannot pass for a good one. */
async function runTests({ tests, limit, workers }, output) {
  const report = join(scratch, `${tests}.json`);
  const args = [
    bin('vitest/vitest.mjs'),
    'run',
    '--project',
    tests,
    '--silent=passed-only',
    '--reporter=default',
    '--reporter=json',
    ...(workers === undefined ? [] : [`--maxWorkers=${workers}`]),
  ];
  const { code, output: text } = await node([...args, `--outputFile.json=${report}`], limit, output);
  const counts = readCounts(report);
  if (counts === null) return { passed: 0, failed: 1, skipped: 0, note: `no report, vitest ended with ${code}`, text };
  const { passed, failed, skipped } = counts;
  if (passed + failed === 0) return { passed, failed: 1, skipped, note: 'no test ran', text };
  // A file that does not load, or an error outside any test, fails the run without failing a test: count it as one.
  if (code !== 0 && failed === 0) return { passed, failed: 1, skipped, note: `vitest ended with ${code}`, text };
  return { passed, failed, skipped, note: '', text };
}

function readCounts(path) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(readFileSync(path, 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests };
  } catch {
    return null;
  }
}

/** Does the work as soon as one of as many places as there are processors is free. */
async function inTurn(work) {
  if (free === 0) await new Promise((resolve) => waiting.push(resolve));
  else free--;
  try {
    return await work();
  } finally {
    const next = waiting.shift();
    if (next) next();
    else free++;
  }
}

/** Runs node with the arguments, without stdin; output is `shown` as it comes or `held` and returned. */
function node(args, limit, output) {
  return new Promise((resolve) => {
    const stdio = output === 'shown' ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'];
    const child = spawn(process.execPath, args, { cwd: root, stdio });
    let held = '';
    child.stdout?.on('data', (chunk) => {
      held += chunk;
    });
    child.stderr?.on('data', (chunk) => {
      held += chunk;
    });
    const timer = setTimeout(() => {
      held += `\nstopped after ${limit / 1000} s`;
      child.kill();
      setTimeout(() => child.kill('SIGKILL'), 5000).unref();
    }, limit);
    child.on('error', (error) => {
      held += error.message;
    });
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      resolve({ code: code ?? signal ?? 'an error', output: held });
    });
  });
}

function report(results) {
  const total = (key) => results.reduce((sum, result) => sum + result[key], 0);
  console.log(`Checks, ${((performance.now() - begin) / 1000).toFixed(0)} s in all`);
  for (const { name, seconds, passed, failed, skipped, note } of results) {
    const mark = failed > 0 ? 'FAILED ' : passed > 0 ? 'passed ' : 'skipped';
    const counts = `${passed} passed${failed > 0 ? `, ${failed} failed` : ''}${skipped > 0 ? `, ${skipped} skipped` : ''}`;
    console.log(`  ${mark}  ${name.padEnd(13)} ${seconds.toFixed(1).padStart(6)} s  ${counts}${note && `  (${note})`}`);
  }
  const skipped = total('skipped');
  console.log(`${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
}

function onCi() {
  return /^(1|true)$/i.test(process.env.CI ?? '');
}
