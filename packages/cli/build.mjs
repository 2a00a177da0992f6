// Bundles the command into one file, dist/flathead.cjs, that plain Node runs, and what its helper threads run into another;
// leaves beside it what the engine has compiled of it after a check of a head.
import { writeFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { compiled, loadProgram } from './bin/program.js';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

await rm(here('dist'), { recursive: true, force: true });
await build({
  absWorkingDir: here('.'),
  entryPoints: { flathead: 'src/main.ts', 'study-helper': 'src/study-helper.ts' },
  outdir: 'dist',
  outExtension: { '.js': '.cjs' },
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  logLevel: 'warning',
});

let complaints = '';
const { script, main } = loadProgram();
const code = await main(['check', here('../../models/kestrel-both.json')], {
  out: () => {},
  err: (text) => {
    complaints += text;
  },
  input: process.stdin,
  colour: false,
  interactive: false,
});
if (code !== 0) throw new Error(`The bundled command can't check a demo head:\n${complaints}`);
writeFileSync(compiled, script.createCachedData());
