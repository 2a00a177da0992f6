import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../command-line/run.ts';

const run = promisify(execFile);
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';

interface Step {
  readonly verb: string;
  readonly words: string;
}

/** Steps of a container file by stage; each stage begins with its FROM. */
function stagesOf(text: string): Step[][] {
  const stages: Step[][] = [];
  for (const line of text.replace(/\\\n/g, ' ').split('\n')) {
    const match = /^([A-Z]+)\s+(.*)$/.exec(line.trim());
    if (match === null) continue;
    if (match[1] === 'FROM') stages.push([]);
    stages.at(-1)!.push({ verb: match[1], words: match[2] });
  }
  return stages;
}

/** Runs the steps of the Containerfile in folders of their own: no container runtime, and Node as it is here. */
describe('Containerfile', () => {
  let folder: string;
  let server: ChildProcess | undefined;
  let stages: Step[][];
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'flathead-container-'));
    stages = stagesOf(await readFile(join(root, 'Containerfile'), 'utf8'));
  });
  afterAll(async () => {
    server?.kill();
    await rm(folder, { recursive: true, force: true });
  });

  it('builds the page from what it copies and serves it from what it keeps', async () => {
    expect(stages.flat().map(({ verb }) => verb)).toEqual(
      expect.arrayContaining(['FROM', 'WORKDIR', 'COPY', 'RUN', 'USER', 'EXPOSE', 'CMD']),
    );
    const { node } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')).engines;
    for (const [{ words }] of stages)
      expect(Number(/^docker\.io\/library\/node:(\d+)-slim/.exec(words)?.[1])).toBeGreaterThanOrEqual(
        Number(/\d+/.exec(node)![0]),
      );
    const [build, kept] = [join(folder, 'build'), join(folder, 'kept')];

    // COPY . . takes what is in the repository; what a builder must not take is ignored.
    expect(stages[0]).toContainEqual({ verb: 'COPY', words: '. .' });
    const ignored = (await readFile(join(root, '.dockerignore'), 'utf8')).trim().split('\n');
    expect(ignored).toEqual(expect.arrayContaining(['node_modules', '**/dist', '.git']));
    const { stdout } = await run('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
      cwd: root,
    });
    for (const file of stdout.split('\0').filter((name) => /^(packages|scripts|models|docs|[^/]+$)/.test(name)))
      await cp(join(root, file), join(build, file)).catch((thrown) => {
        if (thrown.code !== 'ENOENT') throw thrown;
      });

    const [first, ...commands] = stages[0].find(({ verb }) => verb === 'RUN')!.words.split(' && ');
    expect(first).toBe('npm ci --ignore-scripts');
    await installed(build);
    for (const command of commands) {
      expect(command).toMatch(/^npm run [a-z:]+$/);
      await run(npm, command.split(' ').slice(1), { cwd: build }).catch(({ stdout: said, stderr }) => {
        throw new Error(`${command}: ${said}${stderr}`);
      });
    }

    await mkdir(kept);
    const workdir = stages[0].find(({ verb }) => verb === 'WORKDIR')!.words;
    for (const { words } of stages[1].filter(({ verb }) => verb === 'COPY')) {
      const from = /^--from=build (\S+) (\S+)$/.exec(words);
      const [source, target] = from === null ? words.split(' ') : [from[1].replace(`${workdir}/`, ''), from[2]];
      const name = target === '.' ? source.split('/').at(-1)! : target;
      await cp(resolve(from === null ? root : build, source), join(kept, name), { recursive: true });
    }
    const [program, ...args] = JSON.parse(stages[1].find(({ verb }) => verb === 'CMD')!.words) as string[];
    const port = stages[1].find(({ verb }) => verb === 'EXPOSE')!.words;
    expect([program, args.at(-1)]).toEqual(['node', port]);
    // Any free port here.
    server = spawn(process.execPath, [...args.slice(0, -1), '0'], { cwd: kept });
    const line = await new Promise<string>((done, fail) => {
      server!.stdout!.on('data', (text) => done(String(text)));
      server!.stderr!.on('data', (text) => fail(new Error(String(text))));
    });
    const page = await fetch(line.trim());
    expect(page.status).toBe(200);
    const html = await page.text();
    expect(html).toMatch(/<title>Flathead/);
    const script = /src="\.?\/?(assets\/[^"]+\.js)"/.exec(html)![1];
    const asked = await fetch(new URL(script, line.trim()));
    expect([asked.status, asked.headers.get('content-type')]).toEqual([200, 'text/javascript; charset=utf-8']);
  });
});

/** What `npm ci` would install: the packages that are installed here, the project's own ones from the folder itself. */
async function installed(folder: string): Promise<void> {
  const here = join(root, 'node_modules');
  const link = async (from: string, to: string) => {
    await mkdir(dirname(to), { recursive: true });
    await symlink(from, to, 'junction');
  };
  for (const name of await readdir(here)) {
    if (name === '@flathead') continue;
    await link(join(here, name), join(folder, 'node_modules', name));
  }
  for (const name of await readdir(join(folder, 'packages')))
    await link(join(folder, 'packages', name), join(folder, 'node_modules/@flathead', name));
}
