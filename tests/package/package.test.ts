import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../command-line/run.ts';

const run = promisify(execFile);
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';

/** Ten lines that someone else would write. */
const SCRIPT = `
import { readFileSync } from 'node:fs';
import { readHeadModel, solveHead } from '@flathead/solver';
const model = readHeadModel(readFileSync('kestrel.json', 'utf8'));
const { result } = solveHead(model);
const [bow] = result.verdict.criteria;
console.log((1000 * bow.value).toFixed(1), bow.site, result.verdict.outcome);
`;

/** The bow of Kestrel as README.md shows it, um. */
async function printedBow(): Promise<string> {
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  const bow = readme.match(/Case "mounted": .* largest bow ([\d.]+) um/)?.[1];
  if (bow === undefined) throw new Error('README.md shows no bow.');
  return bow;
}

describe('packages', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'flathead-package-'));
    for (const name of ['solver', 'cli'])
      await run(npm, ['pack', '-w', `@flathead/${name}`, '--pack-destination', folder, '--silent'], { cwd: root });
    await writeFile(join(folder, 'package.json'), '{ "private": true, "type": "module" }');
    const packed = (await readdir(folder)).filter((file) => file.endsWith('.tgz')).map((file) => join(folder, file));
    expect(packed).toHaveLength(2);
    const quiet = ['--prefer-offline', '--no-audit', '--no-fund', '--silent'];
    await run(npm, ['install', ...quiet, ...packed], { cwd: folder });
    await cp(join(root, 'models'), join(folder, 'models'), { recursive: true });
    await cp(join(root, 'docs/examples'), join(folder, 'docs/examples'), { recursive: true });
    await cp(join(root, 'models/kestrel-baseline.json'), join(folder, 'kestrel.json'));
  }, 180_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('leave the repository as it was', async () => {
    const { exports } = JSON.parse(await readFile(join(root, 'packages/solver/package.json'), 'utf8'));
    expect(exports['.']).toBe('./src/index.ts');
    const { dependencies } = JSON.parse(await readFile(join(root, 'packages/cli/package.json'), 'utf8'));
    expect(dependencies).toHaveProperty('commander');
  });

  it('give a script in an empty folder the bow of Kestrel', async () => {
    await writeFile(join(folder, 'script.mjs'), SCRIPT);
    const { stdout, stderr } = await run(process.execPath, ['script.mjs'], { cwd: folder });
    expect(stdout).toBe(`${await printedBow()} A3 fail\n`);
    expect(stderr).toBe('');
  });

  it('run the script that docs/library.md shows', async () => {
    const page = await readFile(join(root, 'docs/library.md'), 'utf8');
    const [, script] = /^```js\n(.*?)^```/ms.exec(page)!;
    await writeFile(join(folder, 'shown.mjs'), script);
    const { stdout } = await run(process.execPath, ['shown.mjs'], { cwd: folder });
    expect(stdout).toContain(`Site A3 bows ${await printedBow()} um in case "mounted"`);
  });

  it('hold every entry, and types that a strict project compiles with', async () => {
    const entries = ['', '/exchange', '/node', '/verification'];
    const imports = entries.map((entry, i) => `import * as m${i} from '@flathead/solver${entry}';`);
    const uses = `${imports.join('\n')}
import { solveHead, type HeadModel, type HeadResult } from '@flathead/solver';
export const entries = [${entries.map((_, i) => `m${i}`)}].map((entry) => Object.keys(entry).length);
export const bow = (model: HeadModel): number => solveHead(model).result.cases[0]!.bow.value;
// @ts-expect-error a result has no such field
export const wrong = (result: HeadResult): number => result.bowl;
`;
    await writeFile(join(folder, 'uses.ts'), uses);
    const config = {
      compilerOptions: { strict: true, noEmit: true, module: 'nodenext', target: 'es2022', lib: ['es2023', 'dom'] },
      files: ['uses.ts'],
    };
    await writeFile(join(folder, 'tsconfig.json'), JSON.stringify({ ...config }));
    const compiler = join(root, 'node_modules/typescript/bin/tsc');
    const typeRoots = ['--types', 'node', '--typeRoots', join(root, 'node_modules/@types'), '--skipLibCheck'];
    await run(process.execPath, [compiler, '-p', folder, ...typeRoots], { cwd: folder }).catch(({ stdout }) => {
      throw new Error(stdout);
    });
  });

  it('bundle for a page without anything of Node, kernel included, the worker with its helper beside it', async () => {
    await writeFile(join(folder, 'page.mjs'), "export { solveHead, readHeadModel } from '@flathead/solver';");
    const { errors, warnings, outputFiles } = await build({
      absWorkingDir: folder,
      entryPoints: ['page.mjs'],
      bundle: true,
      platform: 'browser',
      format: 'esm',
      write: false,
    });
    expect([...errors, ...warnings]).toEqual([]);
    const url = `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`;
    const { solveHead, readHeadModel } = await import(/* @vite-ignore */ url);
    const { result } = solveHead(readHeadModel(await readFile(join(folder, 'kestrel.json'), 'utf8')));
    expect((1000 * result.cases[0].bow.value).toFixed(1)).toBe(await printedBow());

    const dist = join(folder, 'node_modules/@flathead/solver/dist/src/worker');
    const [, helper] = (await readFile(join(dist, 'crew-web.js'), 'utf8')).match(/new URL\('\.\/([^']*)'/) ?? [];
    expect(await readdir(dist)).toContain(helper);
  });

  it('bring the command, which needs no other package', async () => {
    const bin = join(folder, 'node_modules/@flathead/cli/bin/flathead.js');
    const alone = join(folder, 'alone/node_modules/@flathead');
    await mkdir(alone, { recursive: true });
    await cp(join(folder, 'node_modules/@flathead/cli'), join(alone, 'cli'), { recursive: true });
    const check = ['check', join(folder, 'kestrel.json')];
    const { stdout } = await run(process.execPath, [bin.replace(folder, join(folder, 'alone')), ...check]).catch(
      // It fails the limit, which is exit code 1.
      (ended) => ended,
    );
    expect(stdout).toContain(`largest bow ${await printedBow()} um at site A3`);
  });

  it('run each of the documented examples, which check themselves', async () => {
    const examples = (await readdir(join(folder, 'docs/examples'))).filter((file) => file.endsWith('.mjs'));
    expect(examples.length).toBeGreaterThanOrEqual(5);
    for (const example of examples) {
      expect(await readFile(join(folder, 'docs/examples', example), 'utf8'), example).toMatch(/^assert\./m);
      await run(process.execPath, [join('docs/examples', example)], { cwd: folder });
    }
  });
});
