// Sweep the preload of the probes, and find where the bow crosses its limit.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readHeadModel, sweepSteps } from '@flathead/solver';

const head = readHeadModel(readFileSync(new URL('../../models/kestrel-baseline.json', import.meta.url), 'utf8'));
const model = { ...head, cases: [{ name: 'mounted' }] };
const steps = sweepSteps(model, {
  vary: [{ path: 'sites.probes.preload', values: { from: 0.03, to: 0.12, count: 4 } }],
});
const bows = [];
let step = steps.next();
for (; !step.done; step = steps.next()) bows.push(step.value.figures.bow.value);
const [{ value: x }] = step.value.crossings;
console.log(bows.map((bow) => `${(1000 * bow).toFixed(1)} um`).join(', '), `limit crossed at ${x.toFixed(4)} N`);

// Superposition: the fasteners act both ways, so the bow goes with the load, and the limit of 35 um is met in proportion.
for (const [i, bow] of bows.entries()) assert.ok(Math.abs(bow / bows[0] - (i + 1)) < 1e-6);
assert.ok(Math.abs(x / ((0.03 * 0.035) / bows[0]) - 1) < 0.01);
