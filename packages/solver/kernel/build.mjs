/*
 * Compiles the dense kernel to WebAssembly, with and without relaxed SIMD, and writes both as text into the package, so that
 * the solver loads them the same way in Node, in a worker and from a single file.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const target = process.argv[2] ?? join(here, '../src/linear-algebra/kernel-binary.ts');
const compiler = createRequire(import.meta.url).resolve('assemblyscript/bin/asc.js');

function compile(features) {
  const out = join(mkdtempSync(join(tmpdir(), 'kernel-')), 'dense.wasm');
  const flags = ['--runtime', 'stub', '--importMemory', '--noAssert', '-O3', '--enable', features];
  execFileSync(
    process.execPath,
    [compiler, join(here, 'factor.ts'), join(here, 'solve.ts'), '--outFile', out, ...flags],
    { stdio: 'inherit' },
  );
  return readFileSync(out).toString('base64');
}

const text = (name, what, base64) => `/** ${what} */\nexport const ${name} =\n  '${base64}';\n`;
writeFileSync(
  target,
  [
    '// Generated from packages/solver/kernel/ by `npm run build:kernel`; do not edit.\n',
    text('SIMD', 'WebAssembly with 128-bit SIMD, base64.', compile('simd,bulk-memory')),
    text(
      'FUSED',
      'The same with fused multiply-add from relaxed SIMD, base64.',
      compile('simd,bulk-memory,relaxed-simd'),
    ),
  ].join('\n'),
);
