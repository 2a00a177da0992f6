import { run } from './program.ts';
import type { Terminal } from './terminal.ts';

/**
 * Runs a command line on a terminal, by default that of this process.
 *
 * @param helper file that helper threads of a study run
 * @returns exit code
 */
export function main(args: readonly string[], terminal: Terminal = ownTerminal(), helper?: string): Promise<number> {
  return run(args, { ...terminal, helper });
}

function ownTerminal(): Terminal {
  // A reader that has seen enough, such as `head`, closes the pipe: no reason to complain.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    input: process.stdin,
    colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined && process.env.TERM !== 'dumb',
    interactive: process.stderr.isTTY === true,
  };
}
