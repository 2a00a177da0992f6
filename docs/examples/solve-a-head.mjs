// Judge a head: how far it bows, and whether forces balance.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readHeadModel, solveHead } from '@flathead/solver';

const model = readHeadModel(readFileSync(new URL('../../models/kestrel-baseline.json', import.meta.url), 'utf8'));
const { result } = solveHead(model);
const [mounted] = result.cases;
console.log(result.verdict.sentence);
console.log(`bow ${(1000 * mounted.bow.value).toFixed(1)} um at site ${mounted.bow.site}`);

// Statics: the fasteners hold back what 10 sites of 336 probes push with, 0.09 N each.
const held = mounted.fasteners.reduce((sum, { reaction }) => sum + reaction, 0);
assert.ok(Math.abs(held + 10 * 336 * 0.09) < 1e-6 * 302.4);
