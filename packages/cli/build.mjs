// Bundles the command into one file, dist/flathead.cjs, that plain Node runs, and what its helper threads run into another;
// leaves beside it what the engine has compiled of it after a check of a head.
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { compiled, loadProgram } from './bin/program.js';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

const { outputFiles } = await build({
  write: false,
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

mkdirSync(here('dist'), { recursive: true });
// It is recognised by the length of its source alone.
rmSync(compiled, { force: true });
for (const { path, contents } of outputFiles) writeWhole(path, contents);

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
writeWhole(compiled, script.createCachedData());

/** Puts a file in its place at once: the command may be started while it is built anew. */
function writeWhole(path, contents) {
  writeFileSync(`${path}.new`, contents);
  renameSync(`${path}.new`, path);
}
