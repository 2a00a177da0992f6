// Tests of the tests: breaks a copy of the solver in one place after the other and sees the checks of the verification book
// that are named for it fail. `npm run perturb` runs all; `npm run perturb -- shear` those whose name has the word. Ends with
// 1 when a perturbation goes unnoticed, or a check fails without any.
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { perturbations } from './perturbations.mjs';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
// Inside of the checkout, so that libraries are found.
const copy = root('dist/perturbed');
const word = process.argv[2] ?? '';
const chosen = perturbations.filter(({ name }) => name.includes(word));

rmSync(copy, { recursive: true, force: true });
mkdirSync(copy, { recursive: true });
for (const folder of ['src', 'verification'])
  cpSync(root(`packages/solver/${folder}`), `${copy}/${folder}`, { recursive: true });

let count = 0;
const sound = new Map();
const problems = chosen.length === 0 ? [`no perturbation has "${word}" in its name`] : [];
for (const { name, file, from, to, noticed } of chosen) {
  const path = `${copy}/src/${file}`;
  const source = readFileSync(path, 'utf8');
  if (source.split(from).length !== 2) {
    problems.push(`${name}: ${file} should have this once:\n    ${from}`);
    continue;
  }
  for (const check of noticed) {
    const key = JSON.stringify(check);
    if (!sound.has(key)) sound.set(key, await outcome(check));
    if (sound.get(key) !== 'within')
      problems.push(`${check.model}: ${check.quantity} is ${sound.get(key)} without any perturbation`);
  }
  writeFileSync(
    path,
    source.replace(from, () => to),
  );
  const outcomes = [];
  for (const check of noticed) outcomes.push([check, await outcome(check)]);
  writeFileSync(path, source);
  for (const [{ model, quantity }, what] of outcomes) {
    console.log(
      `${what === 'within' || what === 'missing' ? 'UNNOTICED' : 'noticed  '}  ${name}  |  ${model}: ${quantity}  |  ${what}`,
    );
    if (what === 'within' || what === 'missing') problems.push(`${name}: ${model}: ${quantity} is ${what}`);
  }
}
rmSync(copy, { recursive: true, force: true });
for (const problem of problems) console.error(problem);
console.log(`${chosen.length} perturbations, ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 1;

/** What becomes of a check in the copy as it stands: within, off by so much, refused with a code, or missing. */
async function outcome({ topic, model, quantity }) {
  const outfile = `${copy}/book-${count++}.mjs`;
  await build({
    entryPoints: [`${copy}/verification/index.ts`],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'warning',
  });
  const { verificationSteps } = await import(pathToFileURL(outfile).href);
  try {
    const rows = [...verificationSteps({ topic, model })].filter((row) => row.quantity.startsWith(quantity));
    if (rows.length === 0) return 'missing';
    const outside = rows.find(({ within }) => !within);
    return outside === undefined ? 'within' : `off by ${(100 * outside.deviation).toPrecision(2)} %`;
  } catch (thrown) {
    return `refused: ${thrown.code ?? thrown.message}`;
  }
}
