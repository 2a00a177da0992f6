import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import {
  Fault,
  type HeadModel,
  headerLine,
  partIndices,
  readHeadModel,
  readJson,
  readPart,
  rowLine,
  type Study,
  type StudyRow,
  summaryLine,
} from '@flathead/solver';
import type { Command } from 'commander';
import { readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import { byCrew } from './study-crew.ts';
import { type Paint, paintFor, progress, type Terminal } from './terminal.ts';

/** Options of every study. */
export interface StudyOptions {
  readonly plan?: string;
  readonly json?: boolean;
  readonly part?: string;
  readonly workers?: string;
}

/** What a study says in words, and the exit code it ends with. */
export interface StudyReport<Row, Summary> {
  text(rows: readonly Row[], summary: Summary, paint: Paint): string;
  code(summary: Summary): number;
}

/** Fewer rows are made by one thread before another has started. */
const FEW = 12;
const MOST_WORKERS = 64;

/** Adds the options that every study has. */
export function studyCommand(program: Command, name: string, description: string): Command {
  return program
    .command(`${name} <head>`)
    .description(description)
    .option('--plan <file>', 'plan in JSON, instead of the options that describe one')
    .option('--json', 'print JSON Lines: a header, the rows as they come, the summary')
    .option('--part <i/n>', 'every n-th row from the i-th on, for `flathead merge`; with --json')
    .option('--workers <n>', 'threads; as many as there are cores if left out');
}

/** Collects the values of an option that may be given several times. */
export function several(value: string, before: readonly string[] = []): string[] {
  return [...before, value];
}

/**
 * The head and the plan of a study: from its file, or from options.
 *
 * @param described whether any option describes a plan
 * @throws Fault USAGE when the plan is given twice or not at all
 */
export async function readStudyInput(
  file: string,
  { plan }: StudyOptions,
  described: boolean,
  fromOptions: () => unknown | Promise<unknown>,
  example: string,
  terminal: Terminal,
): Promise<{ readonly model: HeadModel; readonly plan: unknown }> {
  if ((plan === undefined) !== described)
    throw new Fault(
      'USAGE',
      plan === undefined
        ? `The study has no plan. Give one by options, such as ${example}, or in a file by --plan.`
        : 'The plan is given twice, by --plan and by options. Leave out one of them.',
      '',
      { expected: `--plan FILE or ${example}` },
    );
  const model = readHeadModel(await readInput(file, terminal));
  if (plan === undefined) return { model, plan: await fromOptions() };
  return { model, plan: readJson(await readInput(plan, terminal)) };
}

/**
 * Runs a study: progress on stderr, rows as they come with --json, words at its end without. Ctrl-C stops it between rows;
 * what is made by then is kept.
 *
 * @returns exit code
 */
export async function runStudy<Row extends StudyRow, Summary extends object>(
  study: Study<Row, Summary>,
  model: HeadModel,
  options: StudyOptions,
  report: StudyReport<Row, Summary>,
  terminal: Terminal,
): Promise<number> {
  const { json = false } = options;
  const part = options.part === undefined ? undefined : readPart(options.part);
  if (part !== undefined && !json)
    throw new Fault('USAGE', 'A part of a study is for `flathead merge` to read. Add --json to --part.', '');
  const workers = workersOf(options.workers);
  const indices = partIndices(study.total, part);
  const { step, done } = progress(terminal);
  const stopping = new AbortController();
  const stop = (): void => stopping.abort();
  process.once('SIGINT', stop);
  const rows: Row[] = [];
  const began = performance.now();
  const onRow = (row: Row): void => {
    rows.push(row);
    if (json) terminal.out(rowLine(row));
    const [made, total] = [rows.length, indices.length];
    step(`${made} of ${total}${remaining(made, total, performance.now() - began)}`, { made, total });
  };
  try {
    if (json) terminal.out(headerLine(study, model, part));
    const { helper } = terminal;
    if (workers === 1 || indices.length < FEW || helper === undefined)
      for (const row of study.rows(indices)) {
        onRow(row);
        // Let a Ctrl-C through.
        await setImmediate();
        if (stopping.signal.aborted) break;
      }
    else {
      const order = { kind: study.kind, model, plan: study.plan };
      await byCrew(helper, Math.min(workers, indices.length), order, indices, stopping.signal, onRow);
    }
  } finally {
    process.removeListener('SIGINT', stop);
    done();
  }
  return finish(study, rows, indices.length, options, report, terminal);
}

function finish<Row extends StudyRow, Summary extends object>(
  study: Study<Row, Summary>,
  rows: readonly Row[],
  wanted: number,
  options: StudyOptions,
  report: StudyReport<Row, Summary>,
  terminal: Terminal,
): number {
  const stopped = rows.length < wanted;
  if (stopped)
    terminal.err(`Stopped after ${rows.length} of ${wanted} rows; these are kept. ${howToGoOn(options.part)}\n`);
  const { json = false, part } = options;
  if (json && (stopped || part !== undefined)) return stopped ? EXIT.internal : EXIT.pass;
  const { step, done } = progress(terminal);
  step('summary');
  const summary = study.summary(rows);
  done();
  terminal.out(json ? summaryLine(summary) : report.text(rows, summary, paintFor(terminal)));
  return stopped ? EXIT.internal : report.code(summary);
}

function howToGoOn(part: string | undefined): string {
  return part === undefined
    ? 'Split a long study by --json --part: only a part that is stopped has to be run again.'
    : `Run part ${part} again before you merge.`;
}

function workersOf(text: string | undefined): number {
  if (text === undefined) return Math.min(availableParallelism(), MOST_WORKERS);
  const workers = Number(text);
  if (Number.isInteger(workers) && workers >= 1 && workers <= MOST_WORKERS) return workers;
  throw new Fault('USAGE', `--workers is "${text}"; expected a whole number from 1 to ${MOST_WORKERS}.`, '', {
    value: text,
    expected: `1 to ${MOST_WORKERS}`,
  });
}

function remaining(made: number, total: number, ms: number): string {
  const seconds = ((total - made) * ms) / made / 1000;
  return seconds < 1 ? '' : `, ${seconds.toFixed(0)} s left`;
}

/** A number of an option. @throws Fault USAGE */
export function numberOf(text: string, option: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new Fault('USAGE', `${option} is "${text}"; expected a number.`, '', { value: text, expected: 'a number' });
}
