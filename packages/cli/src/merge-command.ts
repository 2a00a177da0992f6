import { mergeStudies } from '@flathead/solver';
import type { Command } from 'commander';
import { readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import type { Terminal } from './terminal.ts';

/** Adds `flathead merge`. */
export function addMerge(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('merge <parts...>')
    .description('join the parts of a study that --part has split')
    .option('--json', 'errors as JSON too; the study itself always is')
    .action(async (files: string[]) => {
      const parts: { name: string; text: string }[] = [];
      for (const name of files) parts.push({ name, text: await readInput(name, terminal) });
      terminal.out(mergeStudies(parts));
      ended(EXIT.pass);
    });
}
