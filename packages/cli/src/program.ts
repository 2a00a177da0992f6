import { Fault } from '@flathead/solver';
import { Argument, Command, CommanderError, Option } from 'commander';
import manifest from '../package.json' with { type: 'json' };
import { addBudget } from './budget-command.ts';
import { check, materials, type OutputOptions, plate, type SchemaKind, schema, screwSizes } from './commands.ts';
import { addCompletion } from './completion-command.ts';
import { addExport } from './export-command.ts';
import { helpExamples } from './help-examples.ts';
import { addImport } from './import-command.ts';
import { type LogForm, logsOf } from './log.ts';
import { addMerge } from './merge-command.ts';
import { addNew } from './new-command.ts';
import { addPlace } from './place-command.ts';
import { EXIT, refuse } from './refusal.ts';
import { addSites } from './sites-command.ts';
import { addSweep } from './sweep-command.ts';
import type { Terminal } from './terminal.ts';
import { addTolerance } from './tolerance-command.ts';
import { addVerify } from './verify-command.ts';

/**
 * Runs a command line, without the two words before its arguments.
 *
 * @returns exit code: 0 pass, 1 fail, 2 bad input, 3 internal
 */
export async function run(args: readonly string[], screen: Terminal): Promise<number> {
  const { terminal, choose } = logsOf(screen);
  const code = await runOn(args, terminal, choose);
  terminal.log?.({ event: 'end', code });
  return code;
}

async function runOn(args: readonly string[], terminal: Terminal, choose: (form: LogForm) => void): Promise<number> {
  let code: number = EXIT.pass;
  const program = describeProgram(terminal, (ended) => {
    code = ended;
  });
  for (const command of program.commands)
    command
      .addOption(new Option('--log <form>', 'of what goes to stderr: words, or JSON Lines').choices(['text', 'json']))
      .addHelpText('after', helpExamples(command.name()));
  program.hook('preAction', (_, command) => choose(command.opts<{ log?: LogForm }>().log ?? 'text'));
  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (thrown) {
    const json = args.includes('--json');
    if (!(thrown instanceof CommanderError)) return refuse(thrown, json, terminal);
    if (thrown.exitCode === 0) return EXIT.pass;
    // Without any command the help has already gone to stderr.
    if (thrown.code === 'commander.help') return EXIT.badInput;
    const message = thrown.message
      .replace(/^error: /, '')
      .replace(/\s*\n\((.*)\)$/, '. $1')
      .replace(/\.+$/, '');
    return refuse(
      new Fault(
        'USAGE',
        `${message[0].toUpperCase()}${message.slice(1)}${message.endsWith('?') ? '' : '.'} Try flathead --help.`,
      ),
      json,
      terminal,
    );
  }
}

function describeProgram(terminal: Terminal, ended: (code: number) => void): Command {
  const program = new Command('flathead')
    .description('Bow of multi-site probe heads against their planarity limit.')
    .version(manifest.version)
    .exitOverride()
    .configureOutput({ writeOut: terminal.out, writeErr: terminal.err, outputError: () => {} })
    .addHelpText(
      'after',
      `
Start here:
  flathead new --write head.json      a head from a few answers
  flathead check head.json            is it within its limits?
  flathead import probes list.csv     what is in a list of probes? also drawings, heights, fasteners
  flathead place head.json            where should the fasteners go?
  flathead check --help               every command ends its help with examples

Exit codes: 0 pass or marginal, 1 fail, 2 bad input, 3 internal.`,
    );

  const command = (line: string, description: string): Command =>
    program.command(line).description(description).option('--json', 'print one JSON object, errors too');
  const file = (noun: string): Argument => new Argument('<file>', `${noun} in JSON, - for stdin`);

  addNew(program, terminal, ended);
  command('check', 'judge a head model over all its load cases')
    .addArgument(file('head model'))
    .option('--case <name>', 'this load case only')
    .option('-v, --verbose', 'say how it was solved and how long each stage took')
    .option('--advise', 'try what brings a head that is over a limit nearer to it, and say what it gains')
    .action(async (path: string, options: OutputOptions & { case?: string; advise?: boolean }) =>
      ended(await check(path, options, terminal)),
    );
  for (const add of [addImport, addExport, addPlace, addSweep, addTolerance, addBudget, addSites, addMerge])
    add(program, terminal, ended);
  command('plate', 'solve a plate problem')
    .addArgument(file('plate problem'))
    .option('-v, --verbose', 'say how it was solved and how long each stage took')
    .action(async (path: string, options: OutputOptions) => ended(await plate(path, options, terminal)));
  addVerify(program, terminal, ended);
  command('materials', 'list the material presets with their sources').action((options: OutputOptions) =>
    ended(materials(options, terminal)),
  );
  command('screws', 'list the screws with their sources').action((options: OutputOptions) =>
    ended(screwSizes(options, terminal)),
  );
  program
    .command('schema')
    .description('print the JSON Schema of a kind of model file')
    .addArgument(
      new Argument('[kind]', 'which').choices(['head-model', 'plate-problem', 'verdict']).default('head-model'),
    )
    .option('--write <folder>', 'write the schemas of all kinds into a folder instead')
    .action(async (kind: SchemaKind, { write }: { write?: string }) => ended(await schema(kind, write, terminal)));
  addCompletion(program, terminal, ended);
  return program;
}
