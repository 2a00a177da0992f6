/*
 * Compiles the kernel to WebAssembly - with and without relaxed SIMD, for a memory of its own and for one shared between
 * threads - and writes it as text into the package, so that the solver loads it the same way in Node, in a worker and
 * from a single file.
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

/** Pages of 64 kB that a memory may grow to: all that 32-bit addresses reach. */
const MOST_PAGES = 65536;

function compile(features, shared) {
  const out = join(mkdtempSync(join(tmpdir(), 'kernel-')), 'kernel.wasm');
  const flags = ['--runtime', 'stub', '--importMemory', '--noAssert', '-O3', '--enable', features];
  if (shared) flags.push('--sharedMemory', '--initialMemory', '1', '--maximumMemory', String(MOST_PAGES));
  execFileSync(process.execPath, [compiler, join(here, 'index.ts'), '--outFile', out, ...flags], { stdio: 'inherit' });
  return readFileSync(out).toString('base64');
}

const simd = 'simd,bulk-memory,threads';
const fused = `${simd},relaxed-simd`;
const text = (name, what, base64) => `/** ${what} */\nexport const ${name} =\n  '${base64}';\n`;
writeFileSync(
  target,
  [
    '// Generated from packages/solver/kernel/ by `npm run build:kernel`; do not edit.\n',
    text('SIMD', 'WebAssembly with 128-bit SIMD, base64.', compile(simd, false)),
    text('SIMD_SHARED', 'The same for a shared memory.', compile(simd, true)),
    text('FUSED', 'With fused multiply-add from relaxed SIMD.', compile(fused, false)),
    text('FUSED_SHARED', 'The same for a shared memory.', compile(fused, true)),
  ].join('\n'),
);
