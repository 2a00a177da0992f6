import type { VerificationRow } from '@flathead/solver/verification';
import type { Command } from 'commander';
import { EXIT } from './refusal.ts';
import { paintFor, progress, type Terminal } from './terminal.ts';
import { verificationChapter } from './verification-chapter.ts';
import { verificationText } from './verification-report.ts';
import { writeWhole } from './write-whole.ts';

interface VerifyOptions {
  readonly only?: string;
  readonly write?: string;
  readonly json?: boolean;
}

/** Registers `flathead verify`. */
export function addVerify(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('verify')
    .description('solve the cases of the verification book and hold them against their sources')
    .option('--only <topic>', 'this topic only')
    .option('--write <file>', 'write the chapter of the book to a file in Markdown')
    .option('--json', 'print one JSON object, errors too')
    .action(async (options: VerifyOptions) => ended(await verify(options, terminal)));
}

/** Exit code: 0 when every case is within its tolerance, else 1. */
async function verify({ only, write, json = false }: VerifyOptions, terminal: Terminal): Promise<number> {
  // Loaded when asked for: other commands start without it.
  const { verificationCases, verificationSteps } = await import('@flathead/solver/verification');
  const plan = only === undefined ? {} : { topic: only };
  const total = verificationCases(plan).length;
  const { step, done } = progress(terminal);
  const rows: VerificationRow[] = [];
  try {
    for (const row of verificationSteps(plan)) {
      rows.push(row);
      step(`${rows.length} of ${total}: ${row.topic}`);
    }
  } finally {
    done();
  }
  if (write !== undefined) {
    await writeWhole(write, verificationChapter(rows));
    terminal.err(`${write}\n`);
  }
  const within = rows.filter((row) => row.within).length;
  if (json) terminal.out(`${JSON.stringify({ cases: total, within, rows }, null, 2)}\n`);
  else terminal.out(verificationText(rows, paintFor(terminal)));
  return within === total ? EXIT.pass : EXIT.fail;
}
