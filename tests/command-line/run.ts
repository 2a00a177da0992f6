import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));
const launcher = fileURLToPath(new URL('../../packages/cli/bin/flathead.js', import.meta.url));

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  /** Processor time, ms: unlike wall time it hardly depends on what else the machine does. */
  readonly spent: number;
}

/** Loaded into the command's process: says on a pipe of its own how much processor time it took. */
const METER = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
process.on('exit', () => { const { user, system } = process.cpuUsage(); writeSync(3, String((user + system) / 1000)); });`,
)}`;

/** Runs the built command in a process of its own, in the root of the repository. */
export function flathead(args: readonly string[], input = ''): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', METER, launcher, ...args], {
      cwd: root,
      stdio: ['pipe', 'pipe', 'pipe', 'pipe'],
    });
    let [out, err, spent] = ['', '', ''];
    child.stdio[3]?.on('data', (text: Buffer) => {
      spent += text;
    });
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err, spent: Number(spent) }));
    // The command stops reading what is too long; the rest of the pipe is of no interest then.
    child.stdin.on('error', () => {});
    child.stdin.end(input);
  });
}
