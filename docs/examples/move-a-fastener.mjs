// Move the two middle fasteners towards the sites, step by step; each step starts from the stages of the one before.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readHeadModel, solveHead } from '@flathead/solver';

const model = readHeadModel(readFileSync(new URL('../../models/kestrel-baseline.json', import.meta.url), 'utf8'));
const bows = [];
let previous = null;
for (const x of [50, 46, 42]) {
  const fasteners = model.fasteners.map((one) =>
    one.at[1] === 0 ? { ...one, at: [Math.sign(one.at[0]) * x, 0] } : one,
  );
  const { result, stages } = solveHead({ ...model, fasteners }, { quality: 'live', previous });
  previous = stages;
  bows.push(1000 * result.cases[0].bow.value);
  console.log(`x = ${x} mm: bow ${bows.at(-1).toFixed(1)} um`);
}

// 80.1 um is the bow that `flathead check` prints in README.md; the last step solved afresh gives the same as from step to step.
const fasteners = model.fasteners.map((one) =>
  one.at[1] === 0 ? { ...one, at: [Math.sign(one.at[0]) * 42, 0] } : one,
);
const afresh = 1000 * solveHead({ ...model, fasteners }, { quality: 'live' }).result.cases[0].bow.value;
assert.ok(Math.abs(bows[0] - 80.1) < 0.2);
assert.ok(Math.abs(bows[2] / afresh - 1) < 1e-3);
