import { Fault, readHeadModel } from '@flathead/solver';
import { FILE_KINDS, type FileKind, fileRoles, headFlaw, type Preview, readFile } from '@flathead/solver/exchange';
import { Argument, type Command, InvalidArgumentError } from 'commander';
import { readableJson } from './head-json.ts';
import { readBytes, readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import { table } from './table.ts';
import { type Paint, paintFor, type Terminal } from './terminal.ts';
import { writeWhole } from './write-whole.ts';

interface ImportOptions {
  readonly into?: string;
  readonly as?: string;
  readonly layer?: readonly string[];
  readonly units?: string;
  readonly forceUnits?: string;
  readonly heightUnits?: string;
  readonly sheet?: string;
  readonly column?: Readonly<Record<string, string>>;
  readonly gap?: number;
  readonly tolerance?: number;
  readonly centre?: boolean;
  readonly write?: string;
  readonly json?: boolean;
}

/** Left-out lines that are listed. */
const MOST_LISTED = 20;

/** Registers `flathead import`. */
export function addImport(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('import')
    .description('read probes, an outline, seat heights or fasteners into a head model; prints what was read')
    .addArgument(new Argument('<what>', 'kind of file').choices(FILE_KINDS))
    .argument('<file>', 'list as CSV or XLSX, drawing as DXF or SVG; - for stdin')
    .option('--into <head>', 'head model that it goes into')
    .option('--as <role>', `probes: ${fileRoles('probes').join(' or ')}; outline: ${fileRoles('outline').join(', ')}`)
    .option('--layer <name>', 'read this layer of a drawing; may be repeated', appended)
    .option('--units <unit>', 'of lengths, where the file gives none: mm, um, mil, inch, ...')
    .option('--force-units <unit>', 'of forces likewise: N, mN, cN, gf, ozf, ...')
    .option('--height-units <unit>', 'of heights, where they differ from lengths in the plane')
    .option('--sheet <name>', 'of a workbook; the first that it shows if left out')
    .option('--column <what=name>', 'column by its title or number, such as x=3; may be repeated', assigned)
    .option('--gap <mm>', 'drawing: largest gap that is closed; probes: what parts one site from the next', millimetres)
    .option('--tolerance <mm>', 'of chords on curves that are no arcs', millimetres)
    .option('--centre', 'move the middle of the drawing to the origin')
    .option('--write <file>', 'write the head model with it; without, nothing is changed')
    .option('--json', 'print one JSON object, errors too')
    .action(async (what: FileKind, file: string, options: ImportOptions) =>
      ended(await importInto(what, file, options, terminal)),
    );
}

async function importInto(what: FileKind, file: string, options: ImportOptions, terminal: Terminal): Promise<number> {
  if (options.write !== undefined && options.into === undefined)
    throw new Fault('USAGE', 'To write a head, say into which one: add --into HEAD.');
  const { preview, take } = readFile(what, await readBytes(file, terminal), readOptions(options));
  const taken = options.into === undefined ? null : take(readHeadModel(await readInput(options.into, terminal)));
  const flaw = taken === null ? null : headFlaw(taken.model);
  if (taken !== null && options.write !== undefined) await writeWhole(options.write, `${readableJson(taken.model)}\n`);
  const notes = taken?.notes ?? [];
  const written = options.write ?? null;
  if (options.json) terminal.out(`${JSON.stringify({ preview, notes, flaw, written }, null, 2)}\n`);
  else {
    const paint = paintFor(terminal);
    const wrong =
      flaw === null
        ? []
        : [
            `${paint.yellow('The head cannot be solved yet:')} ${flaw.message}${flaw.path === '' ? '' : ` (${flaw.path})`}`,
          ];
    const last =
      written !== null
        ? `Written to ${written}.`
        : `Nothing is changed; add ${options.into === undefined ? '--into HEAD ' : ''}--write FILE to take it.`;
    terminal.out([previewText(preview, paint), ...notes.map((note) => `Note: ${note}`), ...wrong, last, ''].join('\n'));
  }
  return EXIT.pass;
}

function readOptions({ layer, column, centre, ...same }: ImportOptions) {
  return { ...same, layers: layer, columns: column, centre: centre ? ([0, 0] as const) : undefined };
}

function previewText({ counts, extents, layers, units, guesses, dropped }: Preview, paint: Paint): string {
  const told = Object.entries(counts).filter(([, count]) => count > 0);
  const box =
    extents === null
      ? []
      : [
          `x ${plain(extents.min[0])} to ${plain(extents.max[0])} mm, y ${plain(extents.min[1])} to ${plain(extents.max[1])} mm`,
        ];
  const rows = layers.map(({ name, entities }) => [
    name,
    Object.entries(entities)
      .map(([kind, count]) => `${count} ${kind}`)
      .join(', '),
  ]);
  return [
    paint.bold(`Read ${told.map(([kind, count]) => `${count} ${kind}`).join(', ')}`),
    ...box,
    `unit of lengths: ${units.length} (${units.basis})`,
    ...(rows.length === 0 ? [] : [table(['layer', 'holds'], rows, paint, [0, 1])]),
    ...guesses,
    ...(dropped.length === 0 ? [] : [paint.bold(`Left out: ${dropped.length}`)]),
    ...dropped.slice(0, MOST_LISTED).map(({ line, reason }) => `  ${line === 0 ? '' : `line ${line}: `}${reason}`),
    ...(dropped.length > MOST_LISTED ? [`  and ${dropped.length - MOST_LISTED} more; --json lists all`] : []),
  ].join('\n');
}

function plain(value: number): string {
  return String(Number(value.toFixed(4)));
}

function appended(value: string, before: readonly string[] = []): string[] {
  return [...before, value];
}

function assigned(value: string, before: Readonly<Record<string, string>> = {}): Record<string, string> {
  const at = value.indexOf('=');
  if (at < 1) throw new InvalidArgumentError('Write it as x=3 or x=Title.');
  return { ...before, [value.slice(0, at)]: value.slice(at + 1) };
}

function millimetres(value: string): number {
  const number = Number(value);
  if (value.trim() !== '' && Number.isFinite(number) && number >= 0) return number;
  throw new InvalidArgumentError('Give it in mm, 0 or more.');
}
