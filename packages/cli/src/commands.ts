import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type Advice,
  adviseHead,
  didYouMean,
  Fault,
  type HeadModel,
  type HeadRun,
  headSteps,
  materialPresets,
  modelSchemas,
  readHeadModel,
  readPlateProblem,
  screws,
  solvePlate,
} from '@flathead/solver';
import { verdictSchema } from '@flathead/solver/exchange';
import { plain } from './format.ts';
import { headJson, headText } from './head-report.ts';
import { readInput } from './input.ts';
import { plateText } from './plate-report.ts';
import { EXIT } from './refusal.ts';
import { table } from './table.ts';
import { paintFor, progress, type Terminal } from './terminal.ts';
import { writeWhole } from './write-whole.ts';

export interface OutputOptions {
  readonly json?: boolean;
  readonly verbose?: boolean;
}

/** Judges a head. Marginal is no failure, but is said. */
export async function check(
  file: string,
  { json = false, verbose = false, advise = false, case: only }: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  const read = readHeadModel(await readInput(file, terminal));
  const model = only === undefined ? read : withOneCase(read, only);
  const run = solve(model, terminal, json || verbose);
  const { result } = run;
  const advice = advise ? adviseHead(model, run) : null;
  if (json)
    terminal.out(asJson(advise ? { ...headJson(result), advice: adviceMoves(model, advice) } : headJson(result)));
  else terminal.out(headText(result, paintFor(terminal), verbose) + adviceLines(advice));
  return result.verdict.outcome === 'fail' ? EXIT.fail : EXIT.pass;
}

interface CheckOptions extends OutputOptions {
  readonly case?: string;
  readonly advise?: boolean;
}

/** What was tried and helps; of each head only what is changed. */
function adviceMoves({ fasteners, body, frame }: HeadModel, advice: Advice | null) {
  return (advice?.moves ?? []).map(({ model: changed, ...move }) => ({
    ...move,
    ...(changed.body.thickness === body.thickness ? {} : { thickness: changed.body.thickness }),
    ...(changed.frame === frame ? {} : { frame: changed.frame }),
    ...(changed.fasteners === fasteners ? {} : { fasteners: changed.fasteners.map(({ name, at }) => ({ name, at })) }),
  }));
}

function adviceLines(advice: Advice | null): string {
  if (advice === null) return '';
  const said = [...advice.moves.map(({ sentence }) => sentence), ...(advice.conclusion ? [advice.conclusion] : [])];
  return said.map((sentence) => `  Advice: ${sentence}\n`).join('');
}

function solve(model: HeadModel, terminal: Terminal, withStrength: boolean): HeadRun {
  const { step, done } = progress(terminal);
  const steps = headSteps(model, { strength: withStrength ? 'always' : 'when judged' });
  try {
    for (;;) {
      const next = steps.next();
      if (next.done) return next.value;
      step(next.value);
    }
  } finally {
    done();
  }
}

function withOneCase(model: HeadModel, name: string): HeadModel {
  const cases = model.cases.filter((load) => load.name === name);
  if (cases.length > 0) return { ...model, cases };
  const known = model.cases.map((load) => load.name);
  throw new Fault(
    'SCHEMA',
    `The model has no case "${name}".${didYouMean(name, known)} Its cases are ${known.map((other) => `"${other}"`).join(', ')}.`,
    'cases',
    { value: name, expected: known },
  );
}

/** Solves a plate problem. */
export async function plate(
  file: string,
  { json = false, verbose = false }: OutputOptions,
  terminal: Terminal,
): Promise<number> {
  const problem = readPlateProblem(await readInput(file, terminal));
  const { step, done } = progress(terminal);
  step('solve');
  try {
    const { fields: _fields, ...result } = solvePlate(problem);
    done();
    terminal.out(json ? asJson(result) : plateText(problem, result, paintFor(terminal), verbose));
  } finally {
    done();
  }
  return EXIT.pass;
}

export type SchemaKind = keyof ReturnType<typeof modelSchemas> | 'verdict';

/** Prints a JSON Schema, or writes all into a folder. */
export async function schema(kind: SchemaKind, folder: string | undefined, terminal: Terminal): Promise<number> {
  const schemas: Readonly<Record<SchemaKind, object>> = { ...modelSchemas(), verdict: verdictSchema() };
  if (folder === undefined) {
    terminal.out(asJson(schemas[kind]));
    return EXIT.pass;
  }
  await mkdir(folder, { recursive: true });
  for (const [name, content] of Object.entries(schemas)) {
    const file = join(folder, `${name}.schema.json`);
    await writeWhole(file, asJson(content));
    terminal.err(`${file}\n`);
  }
  return EXIT.pass;
}

/** Lists the material presets with their sources. */
export function materials({ json = false }: OutputOptions, terminal: Terminal): number {
  if (json) {
    terminal.out(asJson(materialPresets));
    return EXIT.pass;
  }
  const rows = Object.entries(materialPresets).map(([name, { E, nu, density, expansion, strength, basis, source }]) => [
    name,
    plain(E / 1000),
    plain(nu),
    density === undefined ? '' : plain(density),
    expansion === undefined ? '' : plain(expansion * 1e6),
    strength === undefined ? '' : plain(strength),
    basis,
    source,
  ]);
  const headings = [
    'material',
    'E, GPa',
    'nu',
    'density, g/cm3',
    'expansion, 1e-6/K',
    'strength, MPa',
    'basis',
    'source',
  ];
  terminal.out(`${table(headings, rows, paintFor(terminal), [6, 7])}\n`);
  return EXIT.pass;
}

/** Lists the screws with their sources. */
export function screwSizes({ json = false }: OutputOptions, terminal: Terminal): number {
  if (json) {
    terminal.out(asJson(screws));
    return EXIT.pass;
  }
  const rows = Object.entries(screws).map(([size, { stressArea, head, bearing, hole, source }]) => [
    size,
    ...[stressArea, head, bearing, hole].map(plain),
    source,
  ]);
  terminal.out(
    `${table(['screw', 'area, mm2', 'head, mm', 'bearing, mm', 'hole, mm', 'source'], rows, paintFor(terminal), [5])}\n`,
  );
  return EXIT.pass;
}

function asJson(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
