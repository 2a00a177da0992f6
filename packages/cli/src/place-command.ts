import {
  applyPlacement,
  type CurvePoint,
  type HeadModel,
  type PlacementPlan,
  type PlacementPoint,
  type PlacementSummary,
  placementSteps,
  readHeadModel,
  readPlacementPlan,
} from '@flathead/solver';
import { type Command, InvalidArgumentError } from 'commander';
import { place, um } from './format.ts';
import { readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import { table } from './table.ts';
import { type Paint, paintFor, progress, type Terminal } from './terminal.ts';
import { writeWhole } from './write-whole.ts';

interface PlaceOptions {
  readonly plan?: string;
  readonly count?: number;
  readonly mirror?: 'x' | 'y' | 'both';
  readonly clearance?: number;
  readonly through?: 'frame' | 'body' | 'either';
  readonly edge?: number;
  readonly spacing?: number;
  readonly step?: number;
  readonly objective?: 'bow' | 'flatness' | 'share';
  readonly curve?: 'clearance' | 'count';
  readonly seed?: number;
  readonly write?: string;
  readonly json?: boolean;
}

/** Adds `flathead place`: the search for the best positions of the fasteners. */
export function addPlace(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('place')
    .description('find the best positions for the fasteners of a head')
    .argument('<file>', 'head model in JSON, - for stdin')
    .option('--count <n>', 'fasteners in all; as many as the head has if left out', number)
    .option('--mirror <axes>', 'x, y or both: fasteners in mirrored pairs', oneOf('x', 'y', 'both'))
    .option('--clearance <mm>', 'least distance from screw heads to the probe fields', number)
    .option(
      '--through <part>',
      'frame, body or either: what screws go through; the frame if it has room for all, else either',
      oneOf('frame', 'body', 'either'),
    )
    .option('--edge <mm>', 'least distance from screw heads to the edges of that part', number)
    .option('--spacing <mm>', 'least distance between screws', number)
    .option('--step <mm>', 'positions on a grid of this step only', number)
    .option('--objective <what>', 'bow, flatness, or share of both limits', oneOf('bow', 'flatness', 'share'))
    .option('--curve <over>', 'best placements over the clearance or the count', oneOf('clearance', 'count'))
    .option('--plan <file>', 'placement plan in JSON; options above win over it')
    .option('--seed <n>', 'of the random starts', number)
    .option('--write <file>', 'write the head with the best placement as a model')
    .option('--json', 'print JSON Lines: what is found as it is found, then the summary; errors too')
    .action(async (file: string, options: PlaceOptions) => ended(await placeFasteners(file, options, terminal)));
}

async function placeFasteners(file: string, options: PlaceOptions, terminal: Terminal): Promise<number> {
  const model = readHeadModel(await readInput(file, terminal));
  const plan = await planOf(options, terminal);
  const summary = run(model, plan, options.json === true, terminal);
  if (options.json) terminal.out(`${JSON.stringify({ kind: 'summary', ...summary })}\n`);
  else terminal.out(placementText(model, summary, paintFor(terminal)));
  if (options.write !== undefined) {
    const variant = applyPlacement(model, summary.best.placement);
    await writeWhole(options.write, `${JSON.stringify(variant, null, 2)}\n`);
    terminal.err(`${options.write}\n`);
  }
  return summary.verified.outcome === 'fail' ? EXIT.fail : EXIT.pass;
}

async function planOf(options: PlaceOptions, terminal: Terminal): Promise<PlacementPlan> {
  const { count, mirror, clearance, through, edge, spacing, step, objective, seed, curve } = options;
  const given = { count, mirror, clearance, through, edge, spacing, step, objective, seed };
  const own = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  const over = curve === undefined ? {} : { curve: { over: curve } };
  const file = options.plan === undefined ? '{}' : await readInput(options.plan, terminal);
  return readPlacementPlan(file, { ...own, ...over });
}

/** Runs the study; with `lines` prints each row that is worth keeping. */
function run(model: HeadModel, plan: PlacementPlan, lines: boolean, terminal: Terminal): PlacementSummary {
  const { step, done } = progress(terminal);
  const rows = placementSteps(model, plan);
  try {
    for (;;) {
      const next = rows.next();
      if (next.done) return next.value;
      const row = next.value;
      if (row.kind === 'progress')
        step(`${row.stage} ${row.stage === 'polish' ? row.done : `${Math.round(100 * row.done)} %`}`);
      else if (lines) terminal.out(`${JSON.stringify(row)}\n`);
    }
  } finally {
    done();
  }
}

/** What `flathead place` prints: the fasteners as placed, how good that is and how it was found. */
function placementText(model: HeadModel, summary: PlacementSummary, paint: Paint): string {
  const { best, verified, curve, remarks } = summary;
  const bow = verified.criteria.find(({ criterion }) => criterion === 'bow');
  const mark = { pass: paint.green('PASS'), marginal: paint.yellow('MARGINAL'), fail: paint.red('FAIL') };
  return [
    `${paint.bold(model.name)}  ${paint.dim(`${best.placement.length} fasteners placed`)}`,
    table(
      ['fastener', 'at x, y, mm'],
      best.placement.map(({ name, at }) => [name, place(at)]),
      paint,
    ),
    [
      `${paint.bold(mark[verified.outcome])}  ${verified.sentence}`,
      `  Solved in full: bow ${um(verified.bow)}${bow?.error ? ` +- ${um(bow.error)}` : ''} um, flat within ${um(verified.flatness)} um.`,
      `  In the search:  bow ${um(best.bow)} um, flat within ${um(best.flatness)} um, worst in case "${best.case}".`,
      ...(best.keepsLimits
        ? []
        : ['  No placement was found that keeps the limits on fasteners and contact; this one comes nearest.']),
      `  Nearest screw head to a probe field: ${best.siteGap.toFixed(2)} mm.`,
      ...remarks.map((remark) => `  Note: ${remark}`),
    ].join('\n'),
    ...(curve.length === 0 ? [] : [curveTable(curve, paint)]),
    '',
  ].join('\n\n');
}

function curveTable(curve: readonly CurvePoint[], paint: Paint): string {
  const over = curve[0].over === 'count' ? 'fasteners' : 'clearance, mm';
  const how = ({ how: { method, placements, starts, again } }: PlacementPoint) =>
    method === 'all' ? `best of all ${placements}` : `${again} of ${starts} starts agree`;
  const rows = curve.map(({ at, best }) =>
    best === null ? [`${at}`, '-', '-', 'no placement'] : [`${at}`, um(best.bow), um(best.flatness), how(best)],
  );
  return table([over, 'bow, um', 'flat within, um', 'found'], rows, paint, [3]);
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError(`"${text}" is no number.`);
  return value;
}

function oneOf<T extends string>(...known: readonly T[]): (text: string) => T {
  return (text) => {
    const found = known.find((name) => name === text);
    if (found === undefined)
      throw new InvalidArgumentError(`Give ${known.slice(0, -1).join(', ')} or ${known.at(-1)}.`);
    return found;
  };
}
