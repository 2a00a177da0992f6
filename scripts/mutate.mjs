// Mutation score of the solver core from a sample: changes lines of each room that a seed picks, one mutant at a time, and
// sees whether the room's tests notice. `npm run mutate` takes 16 lines of each room; `npm run mutate -- mesh` only of those
// rooms; `npm run mutate -- --lines 40 --seed 7 mesh` more and others. Ends with 1 below 75 % over all. The survivors are in
// dist/mutation-ROOM.txt. All mutants of some files: `npx stryker run --mutate FILES`.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { rooms } from './mutated-rooms.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const LEAST = 75;
const { values, positionals } = parseArgs({
  options: { lines: { type: 'string', default: '16' }, seed: { type: 'string', default: '1' } },
  allowPositionals: true,
});
const asked = positionals.length === 0 ? Object.keys(rooms) : positionals;
const unknown = asked.filter((room) => rooms[room] === undefined);
if (unknown.length > 0) throw new Error(`no room ${unknown.join(', ')}; there are ${Object.keys(rooms).join(', ')}`);
mkdirSync(`${root}/dist`, { recursive: true });

let [killed, counted] = [0, 0];
for (const room of asked) {
  const mutate = sample(room);
  const report = `${root}/dist/mutation-${room}.json`;
  rmSync(report, { force: true });
  try {
    execFileSync('npx', ['stryker', 'run', '--mutate', mutate.join(',')], {
      cwd: root,
      env: { ...process.env, MUTATED_ROOM: room },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  } catch (thrown) {
    // A run without a report has failed; a low score is judged below.
    if (!readdirSync(`${root}/dist`).includes(`mutation-${room}.json`)) throw thrown;
  }
  const mutants = Object.entries(JSON.parse(readFileSync(report, 'utf8')).files).flatMap(
    ([file, { source, mutants }]) => mutants.map((mutant) => ({ ...mutant, file, source })),
  );
  const noticed = mutants.filter(({ status }) => status === 'Killed' || status === 'Timeout');
  const missed = mutants.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  killed += noticed.length;
  counted += noticed.length + missed.length;
  writeFileSync(`${root}/dist/mutation-${room}.txt`, missed.map(describe).join('\n'));
  console.log(`${room.padEnd(16)} ${score(noticed.length, noticed.length + missed.length)}`);
}
console.log(`${'all'.padEnd(16)} ${score(killed, counted)}, seed ${values.seed}, ${values.lines} lines of each room`);
process.exitCode = counted > 0 && killed >= (LEAST / 100) * counted ? 0 : 1;

function score(noticed, all) {
  return `${String(noticed).padStart(4)} of ${String(all).padStart(4)} mutants noticed, ${all === 0 ? '-' : ((100 * noticed) / all).toFixed(1)} %`;
}

/** Lines of code of a room, picked by the seed, as the ranges that are mutated. */
function sample(room) {
  const folder = `packages/solver/src/${rooms[room].folder ?? room}`;
  const files = readdirSync(`${root}/${folder}`).filter(
    (name) => /(?<!\.d)\.ts$/.test(name) && !(rooms[room].without ?? []).includes(name),
  );
  const lines = files.sort().flatMap((name) =>
    readFileSync(`${root}/${folder}/${name}`, 'utf8')
      .split('\n')
      .flatMap((line, i) => (isCode(line) ? [`${folder}/${name}:${i + 1}-${i + 1}`] : [])),
  );
  const generator = xoroshiro128plus(Number(values.seed));
  const picked = new Set();
  while (picked.size < Math.min(lines.length, Number(values.lines)))
    picked.add(lines[(generator.next() >>> 0) % lines.length]);
  return [...picked];
}

/** Whether a line computes or decides something. Texts of faults and schemas do not. */
function isCode(line) {
  const text = line.trim();
  if (/^(\*|\/\/|\/\*|import |export (type|interface)|readonly |[`'"])/.test(text)) return false;
  if (/\bz\.\w+\(/.test(text)) return false;
  return /( [-+*/%<>&|?]{1,2}=? |===|!==|\?\?|\bif\b|\bwhile\b|\bfor\b|!\w|-\w|Math\.|\+\+|--)/.test(text);
}

function describe({ file, source, location, mutatorName, replacement, status }) {
  const line = source.split('\n')[location.start.line - 1];
  const found =
    location.start.line === location.end.line
      ? line.slice(location.start.column - 1, location.end.column - 1)
      : line.slice(location.start.column - 1);
  return `${status} ${file}:${location.start.line} ${mutatorName}\n    ${line.trim()}\n    ${found}  ->  ${replacement}`;
}
