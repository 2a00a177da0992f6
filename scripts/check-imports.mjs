// Checks who imports whom (.dependency-cruiser.mjs). A run that saw too few modules is a failure, not a pass.
import { existsSync } from 'node:fs';
import { cruise } from 'dependency-cruiser';
import config from '../.dependency-cruiser.mjs';

/** Fewer modules than this mean that the check is blind, whatever it reports. */
const LEAST = { 'packages/solver/src': 100, 'packages/cli/src': 8, 'packages/viewer/src': 60 };

const places = ['packages/solver', 'packages/cli', 'packages/viewer', 'tests', 'scripts', 'benchmarks'].filter(
  existsSync,
);
const { options, ...ruleSet } = config;
const { output } = await cruise(places, { ...options, ruleSet, validate: true });
const { modules, summary } = output;

const problems = summary.violations.map(
  ({ rule, from, to, cycle }) =>
    `${rule.name}: ${from} -> ${cycle ? cycle.map((step) => step.name ?? step).join(' -> ') : to}\n    ${commentOf(rule.name)}`,
);
for (const [place, least] of Object.entries(LEAST)) {
  const seen = modules.filter(({ source }) => source.startsWith(`${place}/`)).length;
  if (seen < least) problems.push(`blind: only ${seen} modules seen in ${place}, expected at least ${least}`);
}
const imports = modules.reduce((sum, { dependencies }) => sum + dependencies.length, 0);
if (modules.length === 0 || imports === 0)
  problems.push(`blind: ${modules.length} modules and ${imports} imports seen`);

console.log(`${modules.length} modules, ${imports} imports, ${problems.length} against the rules`);
for (const problem of problems) console.error(`  ${problem}`);
process.exitCode = problems.length === 0 ? 0 : 1;

function commentOf(name) {
  return config.forbidden.find((rule) => rule.name === name).comment;
}
