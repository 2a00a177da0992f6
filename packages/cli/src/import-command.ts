import { Fault, type HeadModel, readHeadModel } from '@flathead/solver';
import {
  headFlaw,
  OUTLINE_ROLES,
  type OutlineRole,
  type Preview,
  type Reading,
  readDrawing,
  readFastenerList,
  readHeightMap,
  readProbeList,
  type Taken,
  takeFasteners,
  takeHeights,
  takeOutline,
  takeProbes,
} from '@flathead/solver/exchange';
import { Argument, type Command, InvalidArgumentError } from 'commander';
import { readableJson } from './head-json.ts';
import { readInput } from './input.ts';
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
  readonly column?: Readonly<Record<string, string>>;
  readonly gap?: number;
  readonly tolerance?: number;
  readonly centre?: boolean;
  readonly write?: string;
  readonly json?: boolean;
}

type Kind = 'probes' | 'outline' | 'heights' | 'fasteners';

/** What was read, and how it goes into a head. */
interface Read {
  readonly preview: Preview;
  readonly take: (model: HeadModel) => Taken<HeadModel>;
}

/** Left-out lines that are listed. */
const MOST_LISTED = 20;

/** Registers `flathead import`. */
export function addImport(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('import')
    .description('read probes, an outline, seat heights or fasteners into a head model; prints what was read')
    .addArgument(new Argument('<what>', 'kind of file').choices(['probes', 'outline', 'heights', 'fasteners']))
    .argument('<file>', 'list as CSV, drawing as DXF or SVG; - for stdin')
    .option('--into <head>', 'head model that it goes into')
    .option('--as <role>', `probes: points or field; outline: ${OUTLINE_ROLES.join(', ')}`)
    .option('--layer <name>', 'read this layer of a drawing; may be repeated', appended)
    .option('--units <unit>', 'of lengths, where the file gives none: mm, um, mil, inch, ...')
    .option('--force-units <unit>', 'of forces likewise: N, mN, cN, gf, ozf, ...')
    .option('--height-units <unit>', 'of heights, where they differ from lengths in the plane')
    .option('--column <what=name>', 'column by its title or number, such as x=3; may be repeated', assigned)
    .option('--gap <mm>', 'drawing: largest gap that is closed; probes: what parts one site from the next', millimetres)
    .option('--tolerance <mm>', 'of chords on curves that are no arcs', millimetres)
    .option('--centre', 'move the middle of the drawing to the origin')
    .option('--write <file>', 'write the head model with it; without, nothing is changed')
    .option('--json', 'print one JSON object, errors too')
    .action(async (what: Kind, file: string, options: ImportOptions) =>
      ended(await importInto(what, file, options, terminal)),
    );
}

async function importInto(what: Kind, file: string, options: ImportOptions, terminal: Terminal): Promise<number> {
  if (options.write !== undefined && options.into === undefined)
    throw new Fault('USAGE', 'To write a head, say into which one: add --into HEAD.');
  const { preview, take } = read(what, await readInput(file, terminal), options);
  const taken = options.into === undefined ? null : take(readHeadModel(await readInput(options.into, terminal)));
  const flaw = taken === null ? null : headFlaw(taken.model);
  if (taken !== null && options.write !== undefined) await writeWhole(options.write, `${readableJson(taken.model)}\n`);
  const notes = taken?.notes ?? [];
  const written = options.write ?? null;
  if (options.json) terminal.out(`${JSON.stringify({ preview, notes, flaw, written }, null, 2)}\n`);
  else {
    const paint = paintFor(terminal);
    const wrong = flaw === null ? [] : [`${paint.yellow('The head cannot be solved yet:')} ${flaw.message}`];
    const last =
      written !== null ? `Written to ${written}.` : 'Nothing is changed; add --into HEAD --write FILE to take it.';
    terminal.out([previewText(preview, paint), ...notes.map((note) => `Note: ${note}`), ...wrong, last, ''].join('\n'));
  }
  return EXIT.pass;
}

function read(what: Kind, text: string, options: ImportOptions): Read {
  const { as, units, forceUnits, heightUnits, column: columns, gap } = options;
  const lists = { units, forceUnits, heightUnits, columns };
  const from = <T>(
    { read: held, preview }: Reading<T>,
    take: (model: HeadModel, held: T) => Taken<HeadModel>,
  ): Read => ({
    preview,
    take: (model) => take(model, held),
  });
  switch (what) {
    case 'probes': {
      const role = oneOf(as ?? 'points', ['points', 'field'] as const);
      return from(readProbeList(text, { ...lists, gap }), (model, list) => takeProbes(model, list, role));
    }
    case 'outline': {
      const role: OutlineRole = oneOf(as ?? 'auto', OUTLINE_ROLES);
      const { layer: layers, tolerance, centre } = options;
      const drawing = { units, layers, gap, tolerance, centre: centre ? ([0, 0] as const) : undefined };
      return from(readDrawing(text, drawing), (model, shapes) => takeOutline(model, shapes, role));
    }
    case 'heights':
      return from(readHeightMap(text, lists), takeHeights);
    case 'fasteners':
      return from(readFastenerList(text, lists), takeFasteners);
  }
}

function oneOf<T extends string>(value: string, known: readonly T[]): T {
  const found = known.find((role) => role === value);
  if (found !== undefined) return found;
  throw new Fault('USAGE', `--as ${value} is not known here. Use ${known.join(', ')}.`, '', { value, expected: known });
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
    ...dropped.slice(0, MOST_LISTED).map(({ line, reason }) => `  line ${line}: ${reason}`),
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
