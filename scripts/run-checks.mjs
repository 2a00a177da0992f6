// Every check of the project in order, one after the other: what `npm test` runs. All steps run even when one fails.
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

/** A step runs `node` on each of its commands; `tests` names the vitest project whose tests it counts, `workers` how many files run at once; else all but one processor's. */
const steps = [
  { name: 'style', commands: [[bin('@biomejs/biome/bin/biome'), 'check', '.']] },
  {
    name: 'types',
    commands: ['packages/solver', 'packages/solver/test', 'packages/cli', 'packages/viewer', 'tests'].map((p) => [
      bin('typescript/bin/tsc'),
      '-p',
      p,
    ]),
  },
  { name: 'imports', commands: [['scripts/check-imports.mjs']] },
  { name: 'unused', commands: [[bin('knip/bin/knip.js'), '--no-progress']] },
  { name: 'licences', commands: [['scripts/licences.mjs', '--check']] },
  { name: 'api', commands: [['scripts/api.mjs', '--check']] },
  { name: 'links', commands: [['scripts/check-links.mjs']] },
  { name: 'build-cli', commands: [['packages/cli/build.mjs']] },
  { name: 'unit', tests: 'unit', workers: availableParallelism(), limit: 8 * MINUTE },
  { name: 'published', tests: 'published', workers: availableParallelism(), limit: 6 * MINUTE },
  { name: 'fuzz', tests: 'fuzz', limit: 6 * MINUTE },
  { name: 'memory', commands: [['scripts/memory.mjs']] },
  { name: 'command-line', tests: 'command-line', limit: 4 * MINUTE },
  { name: 'package', tests: 'package', limit: 4 * MINUTE },
  {
    name: 'build-viewer',
    commands: [[bin('vite/bin/vite.js'), 'build', '--config', 'packages/viewer/vite.config.ts', '--logLevel', 'warn']],
  },
  { name: 'size', commands: [[bin('size-limit/bin.js')]] },
  {
    name: 'browser',
    tests: 'browser',
    limit: 20 * MINUTE,
    needs: findChromium,
    without: 'no Chromium on this machine',
  },
];

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !steps.some((step) => step.name === name));
if (unknown.length > 0) {
  console.error(`No step called ${unknown.join(', ')}. Steps: ${steps.map((step) => step.name).join(', ')}.`);
  process.exit(2);
}

const outcomes = [];
for (const step of steps) if (asked.length === 0 || asked.includes(step.name)) outcomes.push(await perform(step));
rmSync(scratch, { recursive: true, force: true });
report(outcomes);
process.exitCode = outcomes.every(({ failed }) => failed === 0) ? 0 : 1;

async function perform(step) {
  const begin = performance.now();
  const outcome = (passed, failed, skipped, note = '') => {
    const seconds = (performance.now() - begin) / 1000;
    console.log(`   ${failed > 0 ? 'FAILED' : 'ok'} ${step.name}, ${seconds.toFixed(1)} s${note && `: ${note}`}\n`);
    return { name: step.name, seconds, passed, failed, skipped, note };
  };
  console.log(`-- ${step.name}`);
  if (step.needs && !step.needs())
    return onCi() ? outcome(0, 1, 0, step.without) : outcome(0, 0, 1, `skipped, ${step.without}`);
  if (step.tests) {
    const { passed, failed, skipped, note } = await runTests(step);
    return outcome(passed, failed, skipped, note);
  }
  const broken = [];
  // The commands of a step know nothing of each other: all at once.
  const ends = await Promise.all(step.commands.map((command) => node(command, 5 * MINUTE, 'held')));
  for (const [i, { code, output }] of ends.entries()) {
    if (code === 0) continue;
    console.log(output.trimEnd());
    broken.push(`${step.commands[i].join(' ')} ended with ${code}`);
  }
  return broken.length > 0 ? outcome(0, 1, 0, broken.join('; ')) : outcome(1, 0, 0);
}

/** Runs one vitest project and counts from its JSON report, so that a run without tests cannot pass for a good one. */
async function runTests({ tests, limit, workers }) {
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
  const { code } = await node([...args, `--outputFile.json=${report}`], limit, 'shown');
  const counts = readCounts(report);
  if (counts === null) return { passed: 0, failed: 1, skipped: 0, note: `no report, vitest ended with ${code}` };
  const { passed, failed, skipped } = counts;
  if (passed + failed === 0) return { passed, failed: 1, skipped, note: 'no test ran' };
  // A file that does not load, or an error outside any test, fails the run without failing a test: count it as one.
  if (code !== 0 && failed === 0) return { passed, failed: 1, skipped, note: `vitest ended with ${code}` };
  return { passed, failed, skipped, note: '' };
}

function readCounts(path) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(readFileSync(path, 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests };
  } catch {
    return null;
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
  console.log(`Checks, ${total('seconds').toFixed(0)} s in all`);
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
