import { extname } from 'node:path';
import { Fault, type HeadModel, type HeadResult, readHeadModel, solveHead } from '@flathead/solver';
import {
  fastenerCsv,
  fieldCsv,
  headDxf,
  headGlb,
  headStl,
  headSvg,
  headVtu,
  headXlsx,
  probeCsv,
  readPoints,
  verdictRecord,
} from '@flathead/solver/exchange';
import { Argument, type Command, InvalidArgumentError } from 'commander';
import { readBytes, readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import type { Terminal } from './terminal.ts';
import { writeWhole } from './write-whole.ts';

interface ExportOptions {
  readonly write?: string;
  readonly case?: string;
  readonly step?: number;
  readonly at?: string;
  readonly exaggeration?: number;
  readonly ascii?: boolean;
  readonly json?: boolean;
}

interface Job {
  readonly model: HeadModel;
  readonly solved: () => HeadResult;
  readonly options: ExportOptions;
  readonly terminal: Terminal;
}

type Writer = (job: Job) => string | Uint8Array | Promise<string | Uint8Array>;

/** What is written, by kind and by the ending of the file. */
const WRITERS: Readonly<Record<string, Readonly<Record<string, Writer>>>> = {
  fasteners: { '.csv': ({ model }) => fastenerCsv(model) },
  probes: { '.csv': ({ model }) => probeCsv(model) },
  outline: { '.dxf': ({ model }) => headDxf(model) },
  fields: {
    '.csv': async ({ model, solved, options, terminal }) =>
      fieldCsv(model, solved(), {
        ...options,
        at: options.at === undefined ? undefined : await pointsOf(options.at, terminal),
      }),
    '.vtu': ({ model, solved, options }) => headVtu(model, solved(), options.ascii ? 'ascii' : 'base64'),
  },
  surface: {
    '.glb': ({ model, solved, options }) => headGlb(model, solved(), options),
    '.stl': ({ model, solved, options }) => headStl(model, solved(), options),
  },
  tables: { '.xlsx': ({ model, solved }) => headXlsx(model, solved()) },
  picture: { '.svg': ({ model, solved, options }) => headSvg(model, solved(), options) },
  verdict: { '.json': ({ model, solved }) => `${JSON.stringify(verdictRecord(model, solved()), null, 2)}\n` },
};

/** Registers `flathead export`. */
export function addExport(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  const forms = Object.entries(WRITERS).map(
    ([kind, writers]) => `  ${kind.padEnd(10)} ${Object.keys(writers).join(', ')}`,
  );
  program
    .command('export')
    .description('write a head or its results for other programs; the ending of the file names the format')
    .addArgument(new Argument('<what>', 'what to write').choices(Object.keys(WRITERS)))
    .argument('<head>', 'head model in JSON, - for stdin')
    .requiredOption('--write <file>', 'file to write')
    .option('--case <name>', 'load case of fields, surface and picture; that with the largest bow if left out')
    .option('--step <mm>', 'of the grid of fields', positive)
    .option('--at <file>', 'points where fields are wanted, as CSV or XLSX with x and y, instead of a grid')
    .option('--exaggeration <times>', 'of the deflection of a surface', positive)
    .option('--ascii', 'fields as .vtu in plain numbers')
    .option('--json', 'print one JSON object, errors too')
    .addHelpText('after', `\nFormats:\n${forms.join('\n')}`)
    .action(async (what: string, head: string, options: ExportOptions) =>
      ended(await exportFrom(what, head, options, terminal)),
    );
}

async function exportFrom(what: string, head: string, options: ExportOptions, terminal: Terminal): Promise<number> {
  const file = options.write!;
  const ending = extname(file).toLowerCase();
  const writers = WRITERS[what];
  if (!Object.hasOwn(writers, ending))
    throw new Fault(
      'USAGE',
      `The ${what} can't be written as "${ending}". End the file in ${Object.keys(writers).join(' or ')}${ending === '.png' ? '; the page saves PNG' : ''}.`,
      '',
      { value: file, expected: Object.keys(writers) },
    );
  const model = readHeadModel(await readInput(head, terminal));
  const content = await writers[ending]({ model, solved: () => solveHead(model).result, options, terminal });
  await writeWhole(file, content);
  if (options.json) terminal.out(`${JSON.stringify({ written: file, bytes: content.length }, null, 2)}\n`);
  else terminal.err(`${file}\n`);
  return EXIT.pass;
}

/** Points of a list; lines that are left out are named, since they are missing in what is written too. */
async function pointsOf(file: string, terminal: Terminal): Promise<readonly (readonly [number, number])[]> {
  const { read, preview } = readPoints(await readBytes(file, terminal));
  for (const { line, reason } of preview.dropped) terminal.err(`${file}, line ${line} left out: ${reason}\n`);
  return read;
}

function positive(value: string): number {
  const number = Number(value);
  if (Number.isFinite(number) && number > 0) return number;
  throw new InvalidArgumentError('Give a number above 0.');
}
