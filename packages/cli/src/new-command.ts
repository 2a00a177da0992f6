import { writeFile } from 'node:fs/promises';
import { draftHead, Fault, materialPresets, screws } from '@flathead/solver';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { readableJson } from './head-json.ts';
import { EXIT } from './refusal.ts';
import type { Terminal } from './terminal.ts';

interface NewOptions {
  readonly name: string;
  readonly columns: number;
  readonly rows: number;
  readonly die: readonly [number, number];
  readonly skip: readonly [number, number];
  readonly probes: number;
  readonly pitch: number;
  readonly preload: number;
  readonly touchdown?: number;
  readonly rate?: number;
  readonly material: string;
  readonly thickness: number;
  readonly frame: string;
  readonly frameThickness: number;
  readonly ribs: string;
  readonly fasteners: string;
  readonly screw: string;
  readonly bow: number;
  readonly write?: string;
}

/** Adds `flathead new`. */
export function addNew(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  const materials = Object.keys(materialPresets);
  program
    .command('new')
    .description('draft a whole head from a few answers: a place to start from, which can be judged and edited')
    .option('--name <name>', 'of the head', 'New head')
    .option('--columns <n>', 'sites along x', number, 4)
    .option('--rows <n>', 'sites along y', number, 2)
    .addOption(
      new Option('--die <x,y>', 'size of a die with its scribe line, mm').argParser(pair).default([5, 5], '5,5'),
    )
    .addOption(
      new Option('--skip <x,y>', 'dies left out between neighbouring sites').argParser(pair).default([1, 1], '1,1'),
    )
    .option('--probes <n>', 'in each site', number, 200)
    .option('--pitch <mm>', 'of the probes', number, 0.4)
    .option('--preload <N>', 'of one probe on the mounted head; from the data of your probe', number, 0.08)
    .option('--touchdown <N>', 'of one probe on the wafer', number)
    .option('--rate <N/mm>', 'of the spring of one probe', number)
    .addOption(new Option('--material <name>', 'of the body').choices(materials).default('alumina-96'))
    .option('--thickness <mm>', 'of the body', number, 5)
    .addOption(
      new Option('--frame <material>', 'of a stiffening frame, or none')
        .choices(['none', ...materials])
        .default('stainless-17-4'),
    )
    .option('--frame-thickness <mm>', 'of frame and ribs', number, 4)
    .addOption(new Option('--ribs <where>', 'between').choices(['none', 'columns', 'rows', 'both']).default('none'))
    .addOption(new Option('--fasteners <n>', 'screws to the board').choices(['4', '6', '8']).default('6'))
    .addOption(new Option('--screw <size>', 'of these').choices(Object.keys(screws)).default('M2.5'))
    .option('--bow <mm>', 'limit of the bow', number, 0.03)
    .option('--write <file>', 'write it to a file that is not there yet, instead of printing it')
    .option('--json', 'errors as JSON too; the head always is')
    .action(async (options: NewOptions) => ended(await newHead(options, terminal)));
}

async function newHead(options: NewOptions, terminal: Terminal): Promise<number> {
  const { name, columns, rows, die, skip, material, thickness, frame, frameThickness, ribs, screw, bow } = options;
  const { probes: count, pitch, preload, touchdown, rate, write } = options;
  const model = draftHead({
    name,
    columns,
    rows,
    die,
    skip,
    probes: {
      count,
      pitch,
      preload,
      ...(touchdown === undefined ? {} : { touchdown }),
      ...(rate === undefined ? {} : { rate }),
    },
    body: { material, thickness },
    ...(frame === 'none' ? {} : { frame: { material: frame, thickness: frameThickness, ribs } }),
    fasteners: Number(options.fasteners),
    screw,
    bow,
  });
  const text = `${readableJson(model)}\n`;
  if (write === undefined) terminal.out(text);
  else {
    await writeFile(write, text, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
      throw new Fault('USAGE', `${write} is there already. Name another file, or remove that one first.`, '', {
        value: write,
        expected: 'a file that is not there',
      });
    });
    terminal.err(`${write}\n`);
  }
  return EXIT.pass;
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new InvalidArgumentError('Give a number.');
}

function pair(text: string): [number, number] {
  const parts = text.split(/[,x]/);
  if (parts.length !== 2) throw new InvalidArgumentError('Give two numbers, such as 5,5.');
  return [number(parts[0]), number(parts[1])];
}
