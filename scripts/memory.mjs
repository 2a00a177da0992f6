// Drags a fastener for 2,000 frames and edits a rib 500 times, and ends with 1 when memory in use grows by more than 5 %.
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const MOST_GROWTH = 0.05;
const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const outfile = root('dist/long-run.mjs');

mkdirSync(root('dist'), { recursive: true });
await build({
  entryPoints: [root('tests/memory/long-run.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'warning',
});
const out = execFileSync(process.execPath, ['--expose-gc', outfile, root('models/kestrel-both.json')], {
  encoding: 'utf8',
});
for (const [name, { rounds, early, late, growth }] of Object.entries(JSON.parse(out))) {
  const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
  const fine = growth <= MOST_GROWTH;
  console.log(
    `${name}: ${rounds} rounds, ${megabytes(early)} to ${megabytes(late)}, ${(100 * growth).toFixed(1)} %${fine ? '' : ': too much'}`,
  );
  if (!fine) process.exitCode = 1;
}
