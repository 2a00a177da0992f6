// Read a probe list of another program into a head; a line that cannot be read is named, not guessed.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readHeadModel, solveHead } from '@flathead/solver';
import { readProbeList, takeProbes } from '@flathead/solver/exchange';

const head = readHeadModel(readFileSync(new URL('../../models/kestrel-baseline.json', import.meta.url), 'utf8'));
const rows = Array.from({ length: 400 }, (_, i) => `${(i % 20) * 400 - 3800};${Math.floor(i / 20) * 400 - 3800};8`);
const { read, preview } = readProbeList(['x (um);y (um);force (gf)', ...rows, '0;oops;8'].join('\n'));
console.log(preview.counts, preview.dropped);
const cases = [{ name: 'mounted' }];
const { model } = takeProbes({ ...head, cases }, read, 'points');
const [mounted] = solveHead(model).result.cases;

// 1 gf is 9.80665e-3 N: standard acceleration of free fall, 3rd CGPM (1901).
assert.equal(preview.dropped[0].line, 402);
assert.ok(Math.abs(mounted.load - 400 * 8 * 9.80665e-3) < 1e-6);
