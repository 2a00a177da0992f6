import { Fault, type modelSchemas } from '@flathead/solver';
import { Argument, Command, CommanderError } from 'commander';
import manifest from '../package.json' with { type: 'json' };
import { check, materials, type OutputOptions, plate, schema, screwSizes } from './commands.ts';
import { EXIT, refuse } from './refusal.ts';
import type { Terminal } from './terminal.ts';
import { addVerify } from './verify-command.ts';

/**
 * Runs a command line, without the two words before its arguments.
 *
 * @returns exit code: 0 pass, 1 fail, 2 bad input, 3 internal
 */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  let code: number = EXIT.pass;
  const program = describeProgram(terminal, (ended) => {
    code = ended;
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (thrown) {
    const json = args.includes('--json');
    if (!(thrown instanceof CommanderError)) return refuse(thrown, json, terminal);
    if (thrown.exitCode === 0) return EXIT.pass;
    // Without any command the help has already gone to stderr.
    if (thrown.code === 'commander.help') return EXIT.badInput;
    const message = thrown.message.replace(/^error: /, '');
    return refuse(
      new Fault('USAGE', `${message[0].toUpperCase()}${message.slice(1)}. Try flathead --help.`),
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
    .addHelpText('after', '\nExit codes: 0 pass or marginal, 1 fail, 2 bad input, 3 internal.');

  const command = (line: string, description: string): Command =>
    program.command(line).description(description).option('--json', 'print one JSON object, errors too');
  const file = (noun: string): Argument => new Argument('<file>', `${noun} in JSON, - for stdin`);

  command('check', 'judge a head model over all its load cases')
    .addArgument(file('head model'))
    .option('--case <name>', 'this load case only')
    .option('-v, --verbose', 'say how it was solved and how long each stage took')
    .action(async (path: string, options: OutputOptions & { case?: string }) =>
      ended(await check(path, options, terminal)),
    );
  command('plate', 'solve a plate problem')
    .addArgument(file('plate problem'))
    .option('-v, --verbose', 'say how it was solved and how long each stage took')
    .action(async (path: string, options: OutputOptions) => ended(await plate(path, options, terminal)));
  command('materials', 'list the material presets with their sources').action((options: OutputOptions) =>
    ended(materials(options, terminal)),
  );
  command('screws', 'list the screws with their sources').action((options: OutputOptions) =>
    ended(screwSizes(options, terminal)),
  );
  program
    .command('schema')
    .description('print the JSON Schema of a kind of model file')
    .addArgument(new Argument('[kind]', 'which').choices(['head-model', 'plate-problem']).default('head-model'))
    .option('--write <folder>', 'write the schemas of all kinds into a folder instead')
    .action(async (kind: keyof ReturnType<typeof modelSchemas>, { write }: { write?: string }) =>
      ended(await schema(kind, write, terminal)),
    );
  addVerify(program, ended, terminal);
  return program;
}
