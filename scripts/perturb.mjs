// Tests of the tests: breaks a copy of the solver in one place after the other and sees the checks of the verification book
// that are named for it fail. `npm run perturb` runs all; `npm run perturb -- shear` those whose name has the word. Ends with
// 1 when a perturbation goes unnoticed, or a check fails without any.
// `npm run perturb -- --every` asks the other way round: whether each check of the book fails under some perturbation.
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { perturbations } from './perturbations.mjs';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
// Inside of the checkout, so that libraries are found.
const copy = root('dist/perturbed');
const every = process.argv[2] === '--every';
const word = every ? '' : (process.argv[2] ?? '');
const chosen = perturbations.filter(({ name }) => name.includes(word));

rmSync(copy, { recursive: true, force: true });
mkdirSync(copy, { recursive: true });
for (const folder of ['src', 'verification'])
  cpSync(root(`packages/solver/${folder}`), `${copy}/${folder}`, { recursive: true });

let count = 0;
const problems = chosen.length === 0 ? [`no perturbation has "${word}" in its name`] : [];
const whole = await book();
const sound = new Map();
/** Checks of the book that have not been seen failing. */
const unseen = new Map(whole.verificationCases().map((check) => [check.index, check]));
for (const { name, file, from, to, noticed } of chosen) {
  const path = `${copy}/src/${file}`;
  const source = readFileSync(path, 'utf8');
  if (source.split(from).length !== 2) {
    problems.push(`${name}: ${file} should have this once:\n    ${from}`);
    continue;
  }
  for (const check of every ? [] : noticed) {
    const key = JSON.stringify(check);
    if (!sound.has(key)) sound.set(key, outcome(whole, check));
    if (sound.get(key) !== 'within')
      problems.push(`${check.model}: ${check.quantity} is ${sound.get(key)} without any perturbation`);
  }
  writeFileSync(
    path,
    source.replace(from, () => to),
  );
  const broken = await book();
  writeFileSync(path, source);
  if (every) {
    const before = unseen.size;
    seeFailing(broken);
    console.log(`${String(before - unseen.size).padStart(4)} checks seen failing, ${unseen.size} left  |  ${name}`);
  }
  for (const check of every ? [] : noticed) {
    const what = outcome(broken, check);
    const unnoticed = what === 'within' || what === 'missing';
    console.log(`${unnoticed ? 'UNNOTICED' : 'noticed  '}  ${name}  |  ${check.model}: ${check.quantity}  |  ${what}`);
    if (unnoticed) problems.push(`${name}: ${check.model}: ${check.quantity} is ${what}`);
  }
}
rmSync(copy, { recursive: true, force: true });
if (every)
  for (const { topic, model, quantity } of unseen.values())
    problems.push(`never seen failing: ${topic}, ${model}: ${quantity}`);
for (const problem of problems) console.error(problem);
console.log(`${chosen.length} perturbations, ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 1;

/** The verification book, over the copy as it stands. */
async function book() {
  const outfile = `${copy}/book-${count++}.mjs`;
  await build({
    entryPoints: [`${copy}/verification/index.ts`],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'warning',
  });
  return await import(pathToFileURL(outfile).href);
}

/** What becomes of a check: within, off by so much, refused with a code, or missing. */
function outcome({ verificationSteps }, { topic, model, quantity }) {
  try {
    const rows = [...verificationSteps({ topic, model })].filter((row) => row.quantity.startsWith(quantity));
    if (rows.length === 0) return 'missing';
    const outside = rows.find(({ within }) => !within);
    return outside === undefined ? 'within' : `off by ${(100 * outside.deviation).toPrecision(2)} %`;
  } catch (thrown) {
    return `refused: ${thrown.code ?? thrown.message}`;
  }
}

/** Runs the models that have a check which is still unseen. */
function seeFailing({ verificationSteps }) {
  const models = new Map([...unseen.values()].map(({ topic, model }) => [`${topic}/${model}`, { topic, model }]));
  for (const plan of models.values()) {
    try {
      for (const { index, within } of verificationSteps(plan)) if (!within) unseen.delete(index);
    } catch {
      // Refused: no number, so no check is passed.
      for (const [index, { topic, model }] of unseen)
        if (topic === plan.topic && model === plan.model) unseen.delete(index);
    }
  }
}
