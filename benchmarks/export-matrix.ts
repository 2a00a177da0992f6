/*
 * Writes the grounded stiffness of Kestrel as a MatrixMarket file, lower triangle, so that any sparse solver can be
 * timed on the same matrix.
 *
 *   npx esbuild benchmarks/export-matrix.ts --bundle --platform=node --format=esm --outfile=dist/export-matrix.mjs
 *   node dist/export-matrix.mjs 30000 kestrel-30k.mtx
 */
import { closeSync, openSync, writeSync } from 'node:fs';
import { argv, stderr } from 'node:process';
import { groundedMatrix, kestrelStructure } from './kestrel-system.ts';

const [dofs, file] = [Number(argv[2]), argv[3]];
if (!(dofs >= 3000) || file === undefined) {
  stderr.write('usage: export-matrix DOFS FILE, with at least 3000 dofs\n');
  process.exit(2);
}
const { n, start, column, value } = groundedMatrix(kestrelStructure(dofs));
const out = openSync(file, 'w');
let entries = 0;
let lines: string[] = [];
// The count goes into the header, so entries are counted in a first pass.
for (const write of [false, true]) {
  if (write) writeSync(out, `%%MatrixMarket matrix coordinate real symmetric\n${3 * n} ${3 * n} ${entries}\n`);
  for (let i = 0; i < n; i++) {
    for (let k = start[i]; k < start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          const [row, col, v] = [3 * i + a, 3 * column[k] + b, value[9 * k + 3 * a + b]];
          if (col > row || v === 0) continue;
          if (write) lines.push(`${row + 1} ${col + 1} ${v}\n`);
          else entries++;
        }
    if (lines.length > 20_000) {
      writeSync(out, lines.join(''));
      lines = [];
    }
  }
}
writeSync(out, lines.join(''));
closeSync(out);
stderr.write(`${file}: ${3 * n} dofs, ${entries} entries\n`);
