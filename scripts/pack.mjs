// What `npm pack` runs before and after it packs a package: `node scripts/pack.mjs solver`, `... solver --restore`.
// The repository uses the sources of @flathead/solver; its package holds ES modules and their types, in dist/. That of the
// command holds bundles, which need no other package. While a package is packed, its package.json says so.
import { execFileSync } from 'node:child_process';
import { copyFileSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const run = (...args) => execFileSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'inherit'] });

const packages = {
  solver: { build: buildSolver, packed: pointAtBuild },
  cli: { build: () => run(root('packages/cli/build.mjs')), packed: ({ dependencies: _, ...rest }) => rest },
};

const [name, option] = process.argv.slice(2);
if (!Object.hasOwn(packages, name)) throw new Error(`Say which package: ${Object.keys(packages).join(' or ')}.`);
const manifest = root(`packages/${name}/package.json`);
const dist = root(`packages/${name}/dist`);
/** package.json as the repository has it, while the package is packed. */
const kept = join(dist, 'package.kept.json');

if (existsSync(kept)) renameSync(kept, manifest);
if (option !== '--restore') {
  const { build, packed } = packages[name];
  build();
  copyFileSync(root('LICENSE'), join(dist, 'LICENSE'));
  if (option !== '--build') {
    copyFileSync(manifest, kept);
    const { scripts: _, ...rest } = JSON.parse(readFileSync(kept, 'utf8'));
    writeFileSync(manifest, `${JSON.stringify(packed(rest), null, 2)}\n`);
  }
}

/** Compiles file by file, so that a worker finds its helpers beside it and a bundler can leave out what is not used. */
function buildSolver() {
  rmSync(dist, { recursive: true, force: true });
  run(root('node_modules/typescript/bin/tsc'), '-p', root('packages/solver/tsconfig.pack.json'));
  // The compiler leaves the names of files alone in types and in the address of a worker.
  for (const file of readdirSync(dist, { recursive: true })) {
    if (!/\.(js|d\.ts)$/.test(file)) continue;
    const path = join(dist, file);
    const text = readFileSync(path, 'utf8');
    const named = text.replace(/((?:from |import\(|import |new URL\()['"]\.[^'"]*)\.ts(['"])/g, '$1.js$2');
    if (named !== text) writeFileSync(path, named);
  }
}

function pointAtBuild({ exports, ...rest }) {
  const built = Object.entries(exports).map(([entry, source]) => {
    const base = source.replace('./', './dist/').replace(/\.ts$/, '');
    return [entry, { types: `${base}.d.ts`, default: `${base}.js` }];
  });
  return { ...rest, exports: Object.fromEntries(built) };
}
