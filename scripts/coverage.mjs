// Coverage of the unit and published tests, by package and by room of the solver: lines and branches, percent. Left out are
// tests that repeat what others run (a thousand random meshes) or read a clock. Counting slows the code down, so that a test
// may time out here which passes in `npm test`: that one judges, this one counts, and ends with 1 only without figures.
// The lines themselves are in dist/coverage/index.html.
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const SUMMARY = `${root}/dist/coverage/coverage-summary.json`;
const LEFT_OUT = ['mesh/random-heads', 'mesh/timing', 'linear-algebra/kernel-binary'];

rmSync(SUMMARY, { force: true });
spawnSync(
  process.execPath,
  [
    'node_modules/vitest/vitest.mjs',
    'run',
    ...['--project', 'unit', '--project', 'published', '--reporter', 'dot', '--silent'],
    ...['--maxWorkers', String(availableParallelism()), '--testTimeout', '600000'],
    ...LEFT_OUT.flatMap((name) => ['--exclude', `packages/solver/test/${name}.test.ts`]),
    ...['--coverage', '--coverage.include', 'packages/*/src/**', '--coverage.reportOnFailure'],
    ...['--coverage.reportsDirectory', 'dist/coverage', '--coverage.reporter', 'json-summary'],
    ...['--coverage.reporter', 'html'],
  ],
  { cwd: root, stdio: 'inherit' },
);

const { total, ...files } = JSON.parse(readFileSync(SUMMARY, 'utf8'));
const groups = new Map();
for (const [path, counts] of Object.entries(files)) {
  const [, name, , room] = relative(root, path).split('/');
  add(`${name}, all`, counts);
  if (name === 'solver') add(room.endsWith('.ts') ? 'solver: pipelines' : `solver: ${room}`, counts);
}
console.log(`${''.padEnd(24)} lines  branches`);
for (const [group, counts] of [...groups].sort(([a], [b]) => a.localeCompare(b))) print(group, counts);
print('all', total);

function add(group, counts) {
  const sum = groups.get(group) ?? { lines: { covered: 0, total: 0 }, branches: { covered: 0, total: 0 } };
  groups.set(group, sum);
  for (const kind of ['lines', 'branches'])
    for (const part of ['covered', 'total']) sum[kind][part] += counts[kind][part];
}

function print(group, counts) {
  const share = ({ covered, total }) => (total === 0 ? '-' : ((100 * covered) / total).toFixed(1)).padStart(6);
  console.log(`${group.padEnd(24)}${share(counts.lines)}    ${share(counts.branches)}`);
}
